import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CLEAN_MIN, timelineOf } from '../../../src/kitchen/production/timeline.ts';

test('one after the other, with a full clean between', () => {
  const { works, lengthMin } = timelineOf(
    [
      { mixes: 1, pans: 1, setMin: 60 },
      { mixes: 2, pans: 4, setMin: 60 },
    ],
    10,
  );
  expect(works[0]).toMatchObject({ startMin: 0, mixedMin: 60, setMin: 120, waited: false });
  expect(works[1]).toMatchObject({ startMin: 60 + CLEAN_MIN, mixedMin: 175, setMin: 235, waited: false });
  expect(lengthMin).toBe(235);
});

test('pans wait for those still setting, and never are more than find room', () => {
  const { works } = timelineOf([{ mixes: 2, pans: 4, setMin: 120 }], 2);
  // Second mix: ready at 85, but the first two pans set until 180.
  expect(works[0]).toMatchObject({ mixedMin: 180, setMin: 300, waited: true });
  const work = fc.record({
    mixes: fc.integer({ min: 1, max: 4 }),
    pans: fc.integer({ min: 0, max: 4 }),
    setMin: fc.integer({ min: 0, max: 300 }),
  });
  fc.assert(
    fc.property(fc.array(work, { maxLength: 6 }), fc.integer({ min: 4, max: 9 }), (all, room) => {
      const { mostPans } = timelineOf(all, room);
      expect(mostPans).toBeLessThanOrEqual(room);
    }),
  );
});
