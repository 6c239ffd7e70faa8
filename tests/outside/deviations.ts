import { fileURLToPath } from 'node:url';
import { compareAll, spreadOf, spreadOfShares } from './compare.ts';
import { comparePublished, publishedShares } from './published.ts';
import {
  type OutsideQuantity,
  PUBLISHED_TOLERANCES,
  type PublishedNutrient,
  TOLERANCES,
} from './tolerances.ts';

// Bundled into dist/, one folder below the repository.
const inRepository = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));
const percent = (share: number): string => `${(share * 100).toFixed(2)} %`.padStart(9);
const row = (name: string, { n, mean, p50, p90, max }: ReturnType<typeof spreadOfShares>): string =>
  `${name.padEnd(30)}${`${n}`.padStart(5)}${[mean, p50, p90, max].map(percent).join('')}`;

const { deviations, skipped } = compareAll(inRepository('recipes'));
const published = await comparePublished(inRepository('recipes'), inRepository('tests/outside/published'));

/** Prints how far our figures are from published ones: `npm run deviations`. */
const lines = (Object.keys(TOLERANCES) as OutsideQuantity[]).map((quantity) =>
  row(quantity, spreadOf(deviations, quantity)),
);
const whole = (['typed', 'card'] as const).flatMap((way) =>
  (Object.keys(PUBLISHED_TOLERANCES) as PublishedNutrient[]).map((nutrient) => {
    const shares = publishedShares(published, way, nutrient);
    const { within } = PUBLISHED_TOLERANCES[nutrient];
    const near = shares.filter((one) => one <= within).length;
    return `${row(`published ${way} ${nutrient}`, spreadOfShares(shares))}   ${near} of ${shares.length} within ${within * 100} %`;
  }),
);
const head = `${'quantity'.padEnd(30)}${'n'.padStart(5)}${['mean', 'p50', 'p90', 'max'].map((name) => name.padStart(9)).join('')}`;
const each = published
  .filter(({ way }) => way === 'typed')
  .map(({ recipe, figures }) => {
    const shown = figures.map(({ nutrient, ours, theirs }) =>
      ours === undefined ? `${nutrient} none` : `${nutrient} ${ours.toFixed(1)} (${theirs})`,
    );
    return `  ${recipe.file.replace('.yaml', '').padEnd(32)}${shown.join(', ')}`;
  });
const lost = skipped.length > 0 ? [`skipped: ${skipped.join('; ')}`] : [];
const text = [head, ...lines, ...whole, '', 'published recipes, ours (printed) a serving:', ...each, ...lost];
process.stdout.write(`${text.join('\n')}\n`);
