export const CHOKING: readonly RegExp[] = [
  / (?:choking|choked) /,
  / (?:is|are|hes|shes|hes|might be|may be|started) (?:choke|chokes) | (?:he|she|kid|player|athlete|someone) (?:chokes|choke) /,
  / (?:stuck|lodged|blocking|caught) (?:[a-z]+ ){0,3}(?:throat|airway|windpipe) /,
  / (?:cant|cannot|not able to|unable to) (?:talk|speak|cough|swallow)/,
  / airways? (?!product)/,
  / inhaled (?:an? |some |the |his |her |my )?[a-z]+ .*(?:cough\w*|chok\w*|breath\w*|gag\w*) | (?:cough\w*|chok\w*|gag\w*) .*inhaled /,
  / (?:got|has|have|something|food|piece|bite|chunk|bar|stuck) (?:[a-z]+ ){0,5}in (?:his|her|my|their) (?:throat|windpipe) /,
  / gagging (?:[a-z]+ )*(?:cant|cannot|stop) | heimlich /,
  / went down (?:the )?wrong (?:way|pipe|tube|hole) | (?:abdominal|belly) thrusts | back blows /,
  / (?:food|bite|bar|piece|grape|nut|chunk|something|it) (?:[a-z]+ ){0,3}(?:stuck|lodged|caught) (?:[a-z]+ ){0,3}(?:throat|airway|windpipe|neck) /,
];
