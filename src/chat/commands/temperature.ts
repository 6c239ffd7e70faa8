import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

/** Limits: FDA Food Code model, 3-501.16 cold and hot holding. */
export const temperature = laterCommand({
  intent: 'temperature',
  roles: KITCHEN_ROLES,
  line: 'what a temperature reading means and what to do now',
  examples: ['fridge 44F', 'cooler 6C'],
  title:
    'Cold food is held at 41 °F (5 °C) or below, hot food at 135 °F (57 °C) or above (FDA Food Code model). Not logged.',
  willDo:
    'a log of readings with what was done, the batches in that fridge and a reminder to read it twice a day.',
  today:
    'if it reads warmer than 41 °F, check with a second thermometer, close the door, move the food to a unit that holds 41 °F, and find out since when it was warm. Keep it apart and ask the person in charge before any of it is served; when nobody can say how long, throw it out. Write time, reading and what you did on the log.',
  cautions: [
    'Your local health code may be stricter and it decides. I cannot tell whether food is fit to serve.',
  ],
});
