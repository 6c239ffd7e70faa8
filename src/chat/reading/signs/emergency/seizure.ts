export const SEIZURE: readonly RegExp[] = [
  / eyes? (?:[a-z]+ ){0,2}(?:rolled|rolling|roll) | (?:is|went|gone|going|hes|shes|completely|all|body) limp /,
  / (?:fit|fits) on the (?:floor|ground|field) | (?:having|had|has|throwing) (?:a |an |some )?(?:kind of )?fits? (?!for|in the)/,
  / shaking (?:[a-z]+ ){0,3}(?:ground|floor|uncontroll\w*|violently|all over) /,
  / seiz(?:ure|ures|ing|es) | (?:convuls\w+) | (?:having|had|has|throwing) (?:a |an )?(?:epileptic )?fits? /,
  / (?:foaming|froth\w*) | (?:body|shaking) (?:[a-z]+ ){0,3}(?:uncontroll\w*|floor|violently) | eyes rolled/,
  / (?:he|she|they|hes|shes|kid|player|athlete|body|him|her|girl|guy|wp-\d\d|[a-z]{2}-\d\d) (?:[a-z]+ ){0,3}(?:shaking|jerking|twitching|convulsing|spasming) (?:[a-z]+ ){0,4}(?:ground|floor|stop|uncontrol\w*|bad|badly|violent\w*|all over|like crazy|nonstop|not|wont|cant|respond\w*|and|help) /,
  / (?:body|arms|legs|he|she|hes|shes|they|him|her) (?:is |are |was |were |keeps? |started |all |just |whole )*(?:jerking|convulsing|twitching|spasming|thrashing) /,
  / (?:cant|wont) stop (?:shaking|jerking|twitching|convulsing) /,
];
