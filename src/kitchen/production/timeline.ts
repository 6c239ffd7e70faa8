/** Weighing, mixing, pressing and cutting the first mix of a recipe, and each mix after it: common practice, no source. */
const FIRST_MIX_MIN = 60;
const NEXT_MIX_MIN = 25;
/** Washing, rinsing and sanitizing bench, bowls and tools before another recipe: common practice, no source. */
export const CLEAN_MIN = 30;

/** One recipe to be made, as far as time goes. */
export interface Work {
  readonly mixes: number;
  /** Pans that set in the refrigerator; 0 for what is not chilled in pans. */
  readonly pans: number;
  readonly setMin: number;
}

/** Minutes from the start of all work. */
export interface WorkTimes {
  readonly startMin: number;
  /** In the pan, or in its bags. */
  readonly mixedMin: number;
  /** Set at the least time. */
  readonly setMin: number;
  /** It waited for room in the refrigerator. */
  readonly waited: boolean;
}

export interface Timeline {
  readonly works: readonly WorkTimes[];
  /** Until all is set. */
  readonly lengthMin: number;
  /** Pans in the refrigerator at once, at the most. */
  readonly mostPans: number;
}

/**
 * One work after the other with a full clean between, mix by mix; a mix waits until its pans find room among those
 * still setting. A mix with more pans than there is room for at all goes in when the refrigerator is empty.
 * @param room pans the refrigerators take; undefined when nobody has said, then nothing waits.
 */
export function timelineOf(works: readonly Work[], room: number | undefined): Timeline {
  const setting: { untilMin: number; pans: number }[] = [];
  let nowMin = 0;
  let mostPans = 0;
  const times = works.map((work, at): WorkTimes => {
    if (at > 0) nowMin += CLEAN_MIN;
    const startMin = nowMin;
    let waited = false;
    let lastSetMin = nowMin;
    for (let mix = 0; mix < work.mixes; mix++) {
      const pans = pansOfMix(work, mix);
      const mixedMin = nowMin + (mix === 0 ? FIRST_MIX_MIN : NEXT_MIX_MIN);
      const inMin = whenRoom(setting, pans, mixedMin, room);
      waited ||= inMin > mixedMin;
      lastSetMin = inMin + work.setMin;
      if (pans > 0) setting.push({ untilMin: lastSetMin, pans });
      mostPans = Math.max(mostPans, inAt(setting, inMin));
      nowMin = inMin;
    }
    return { startMin, mixedMin: nowMin, setMin: lastSetMin, waited };
  });
  return { works: times, lengthMin: Math.max(0, ...times.map(({ setMin }) => setMin)), mostPans };
}

/** Pans shared out over the mixes, the first ones taking one more where it does not come out even. */
const pansOfMix = ({ pans, mixes }: Work, mix: number): number =>
  Math.floor(pans / mixes) + (mix < pans % mixes ? 1 : 0);

const inAt = (setting: readonly { untilMin: number; pans: number }[], min: number): number =>
  setting.reduce((sum, { untilMin, pans }) => (untilMin > min ? sum + pans : sum), 0);

function whenRoom(
  setting: readonly { untilMin: number; pans: number }[],
  pans: number,
  fromMin: number,
  room: number | undefined,
): number {
  if (room === undefined || pans === 0) return fromMin;
  const ends = setting.map(({ untilMin }) => untilMin).filter((min) => min > fromMin);
  const fits = (min: number) => inAt(setting, min) === 0 || inAt(setting, min) + pans <= room;
  return [fromMin, ...ends.sort((a, b) => a - b)].find(fits) ?? fromMin;
}
