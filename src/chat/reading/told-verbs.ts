import type { Intent } from '../slots.ts';

/** The verbs of the ledger, in the past: what was done with pieces. */
export interface ToldVerbs {
  readonly intent: Intent;
  /** Said of food only: a number after them is enough. */
  readonly sure: string;
  /** Said of anything: pieces must be named after the number. */
  readonly loose: string;
  /** What comes after the pieces: "12 bars went out". */
  readonly after: string;
}

export const TOLD_VERBS: readonly ToldVerbs[] = [
  {
    intent: 'made',
    sure: 'baked|prepped|whipped up|cranked out|knocked out|churned out|banged out|portioned|wrapped(?: up)?|bagged(?: up)?|boxed(?: up)?|cooked|made(?! sure| a note| it| room| up| for)',
    loose:
      'produced|rolled|pressed|assembled|put together|finished(?: up)?|completed|complete|jarred|cupped|filled|done(?: with| w)?|mixed up|got through making',
    after:
      '(?:are |is |were |all |have been |just |now )+(?:made|done|finished|baked|prepped|wrapped|portioned|bagged|complete|completed) |(?:made|baked|prepped|finished|done)(?= $| and )',
  },
  {
    intent: 'served',
    sure: 'served|srvd|handed out|gave out|gave away|passed out|dished out|distributed|went through|dropped off|fed',
    loose:
      'gave|handed|passed|sold|delivered|sent|ate|eaten|grabbed|took|taken|demolished|crushed|devoured|inhaled|housed|killed|smashed|destroyed|scarfed(?: down)?|snagged|polished off|put away|picked up|consumed|shared|donated|snatched|wolfed down|mowed through|blew through|burned through|loaded|let go of',
    after:
      '(?:were |was |have been |got |are |is |all |just |been |have |has |already )*(?:served|handed out|handed|given out|given away|given to|given|distributed|eaten|taken|sold|delivered|grabbed|gone|consumed|devoured|demolished|shared|donated|picked up|passed out|used for)(?! by W)|(?:all |just |have |has )*(?:went|going|headed|shipped|walked) (?:out|to|with|home|on|over|off)|left (?:the |with |for )(?:L |kitchen |building |team |S |bus )?|out the door|out to (?:the )?(?:[a-z]+ )?(?:S|P|team|field|court|practice)|to (?:the )?(?:[a-z]+ )?(?:S|P|team|staff|coaches|trainers?) (?:[a-z]+ )?(?:W|this|already|after|at practice|just now|earlier)|on(?:to)? (?:the )?(?:[a-z]+ )?(?:bus|van|plane)',
  },
  {
    intent: 'tossed',
    sure: 'tossed(?: out)?|threw|throwed|thrown(?: out| away)?|dumped|trashed|discarded|binned|wasted|chucked|pitched|got rid of|scrapped|junked|composted|disposed of|did away with|(?:had|have) to (?:throw|toss|dump|trash|bin|chuck|pitch|discard|scrap|pull)',
    loose: 'dropped|lost|ruined|spilled|burned|burnt|scorched',
    after:
      '(?:were |was |have |has |had |got |are |is |all |just |been |they |that |which )*(?:tossed|thrown out|thrown away|thrown|dumped|trashed|discarded|binned|wasted|chucked|ruined|spoiled|moldy|molded|went bad|gone bad|went off|expired so|in the (?:trash|garbage|bin)|into the (?:trash|garbage|bin)|to (?:the )?(?:trash|garbage|bin|waste)|fell on the|hit the floor|on the floor|stale so|inedible|contaminated)',
  },
];
