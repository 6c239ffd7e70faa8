import { fileURLToPath } from 'node:url';
import { compareAll, spreadOf } from './compare.ts';
import { type OutsideQuantity, TOLERANCES } from './tolerances.ts';

const percent = (share: number): string => `${(share * 100).toFixed(2)} %`.padStart(9);
const { deviations, skipped } = compareAll(fileURLToPath(new URL('../recipes', import.meta.url)));

/** Prints how far our figures are from published ones: `npm run deviations`. */
const lines = (Object.keys(TOLERANCES) as OutsideQuantity[]).map((quantity) => {
  const { n, mean, p50, p90, max } = spreadOf(deviations, quantity);
  return `${quantity.padEnd(22)}${`${n}`.padStart(5)}${[mean, p50, p90, max].map(percent).join('')}`;
});
const head = `${'quantity'.padEnd(22)}${'n'.padStart(5)}${['mean', 'p50', 'p90', 'max'].map((name) => name.padStart(9)).join('')}`;
const lost = skipped.length > 0 ? [`skipped: ${skipped.join('; ')}`] : [];
process.stdout.write(`${[head, ...lines, ...lost].join('\n')}\n`);
