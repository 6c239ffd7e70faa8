import { describe, expect, test } from 'vitest';
import { readLine } from '../../src/nutrition/ingredient-list/read-line.ts';
import { splitLines } from '../../src/nutrition/ingredient-list/split-lines.ts';
import { Problem } from '../../src/nutrition/problem.ts';

const FOODS = new Set([
  'rolled oats',
  'oats',
  'peanut butter',
  'honey',
  'banana',
  'bananas',
  'egg',
  'eggs',
  'half and half',
  'salt',
  'black beans',
  'sunflower butter',
  'whole wheat tortilla',
  'vanilla',
  'cinnamon',
  'nuts',
  'milk',
]);
const isFood = (words: string): boolean => FOODS.has(words.trim().toLowerCase());
const split = (text: string) => splitLines(text, isFood).lines;

describe('a list of ingredients', () => {
  test.each<[text: string, lines: string[]]>([
    ['2 tbsp sunflower butter + banana', ['2 tbsp sunflower butter', 'banana']],
    ['oats and honey', ['oats', 'honey']],
    ['1 1/2 cups of rolled oats, toasted', ['1 1/2 cups of rolled oats, toasted']],
    ['1 cup oats, 2 tbsp honey, and a banana', ['1 cup oats', '2 tbsp honey', 'a banana']],
    ['1 cup half and half', ['1 cup half and half']],
    ['1 cup half and half and 1 banana', ['1 cup half and half', '1 banana']],
    ['1/4 cup plus 2 tbsp honey', ['1/4 cup plus 2 tbsp honey']],
    ['1/4 cup + 2 tbsp honey + 1 egg', ['1/4 cup + 2 tbsp honey', '1 egg']],
    ['1,000 g oats, salt to taste', ['1,000 g oats', 'salt to taste']],
    ['1 (15 oz) can black beans, drained, rinsed', ['1 (15 oz) can black beans, drained, rinsed']],
    ['2 bananas (ripe, mashed), 1 cup oats', ['2 bananas (ripe, mashed)', '1 cup oats']],
    ['two and a half cups oats', ['two and a half cups oats']],
    ['- 2 cups oats\n- 1 cup honey\n\n• 3 eggs', ['- 2 cups oats', '- 1 cup honey', '• 3 eggs']],
    ['oats; honey ; banana', ['oats', 'honey', 'banana']],
    ['1 cup oats with 1 cup milk', ['1 cup oats', '1 cup milk']],
    ['', []],
    [' , + ;', []],
  ])('%j', (text, lines) => {
    expect(split(text)).toEqual(lines);
  });

  test('may name its yield', () => {
    expect(splitLines('2 cups rolled oats, 1 cup peanut butter, 1/2 cup honey makes 24', isFood)).toEqual({
      lines: ['2 cups rolled oats', '1 cup peanut butter', '1/2 cup honey'],
      pieces: 24,
    });
    expect(splitLines('makes about 12 bars\n2 cups oats', isFood)).toEqual({
      lines: ['2 cups oats'],
      pieces: 12,
    });
    expect(splitLines('2 cups oats, cut into 8 bars.', isFood)).toEqual({
      lines: ['2 cups oats'],
      pieces: 8,
    });
  });
});

const short = (line: string) => {
  const read = readLine(line, isFood);
  const measures = read.measures.map(({ quantity, unitId }) => {
    const most = quantity.most ? `-${quantity.most.amount}` : '';
    return `${Number(quantity.amount.toFixed(4))}${most}${unitId ? ` ${unitId}` : ''}`;
  });
  const stated = read.stated ? ` [${Math.round(read.stated.massG)} g ${read.stated.of}]` : '';
  return `${measures.join(' + ')} | ${read.foodWords}${read.prep ? ` | ${read.prep}` : ''}${stated}`;
};

describe('an ingredient line', () => {
  test.each([
    ['2 tbsp peanut butter', '2 tbsp | peanut butter'],
    ['2 T honey', '2 tbsp | honey'],
    ['2 t honey', '2 tsp | honey'],
    ['1 1/2 cups of rolled oats, toasted', '1.5 cup | rolled oats | toasted'],
    ['1½ cups rolled oats', '1.5 cup | rolled oats'],
    ['3 large eggs', '3 large | eggs'],
    ['3 eggs', '3 | eggs'],
    ['a banana', '1 | banana'],
    ['half a banana', '0.5 | banana'],
    ['banana', ' | banana'],
    ['200g oats', '200 g | oats'],
    ['1/2c honey', '0.5 cup | honey'],
    ['1 (15 oz) can black beans, drained', '1 can | black beans | drained [425 g each]'],
    ['2 15-oz cans black beans', '2 can | black beans [425 g each]'],
    ['2 15 oz cans black beans', '2 can | black beans [425 g each]'],
    ['2 cans (15 oz) black beans', '2 can | black beans [425 g each]'],
    ['2 cups (162 g) rolled oats', '2 cup | rolled oats [162 g total]'],
    ['4 scoops (30 g each) vanilla', '4 scoop | vanilla [30 g each]'],
    ['4 x 30 g scoops vanilla', '4 scoop | vanilla [30 g each]'],
    ['2-3 tbsp honey', '2-3 tbsp | honey'],
    ['1/4 cup plus 2 tbsp honey', '0.25 cup + 2 tbsp | honey'],
    ['1 whole wheat tortilla', '1 | whole wheat tortilla'],
    ['2 heaping tbsp peanut butter', '2 tbsp | peanut butter'],
    ['rolled oats 2 cups', '2 cup | rolled oats'],
    ['rolled oats - 2 cups', '2 cup | rolled oats'],
    ['honey: 30 g', '30 g | honey'],
    ['- 2 cups oats', '2 cup | oats'],
    ['pinch of salt', '1 pinch | salt'],
    ['1 cup half and half', '1 cup | half and half'],
    ['salt to taste', ' | salt'],
    ['a dozen eggs', '12 | eggs'],
  ])('%j', (line, expected) => {
    expect(short(line)).toBe(expected);
  });

  test('says when the amount is left to the cook', () => {
    expect(readLine('salt to taste', isFood).leftToTheCook).toBe(true);
    expect(readLine('salt, to taste', isFood).leftToTheCook).toBe(true);
    expect(readLine('1/4 cup oats for rolling', isFood).leftToTheCook).toBe(false);
  });

  test('refuses less than nothing', () => {
    expect(() => readLine('-3 cups oats', isFood)).toThrow(Problem);
  });
});

describe('an ingredient line as a published recipe prints it', () => {
  test.each([
    ['2 lb 4 oz rolled oats', '2 lb + 4 oz | rolled oats'],
    ['1 qt 1 2/3 cups rolled oats', '1 quart + 1.6667 cup | rolled oats'],
    ['7.5 oz or 1 2/3 cups oats', '7.5 oz | oats'],
    ['1 2/3 cups or 7.5 oz oats', '7.5 oz | oats'],
    ['rolled oats\t2 qt\t1 lb 15 oz', '1 lb + 15 oz | rolled oats'],
    ['| honey | 1 cup + 2 tbsp |', '1 cup + 2 tbsp | honey'],
    ['salt, table 1 1/2 teaspoon(s)', '1.5 tsp | salt | table'],
    ['oats, quick 3 quarts, dry', '3 quart | oats | quick, dry'],
    ['3/4 cup, peanut butter', '0.75 cup | peanut butter'],
    ['2- 12.5 oz cans black beans', '2 can | black beans [354 g each]'],
    ['1 - egg, fresh, large', '1 | egg | fresh, large'],
    ['2 cups (6½ oz) oats', '2 cup | oats [184 g total]'],
    ['6 cups (1 lb 11 oz) nuts', '6 cup | nuts [765 g total]'],
    ['2 tablespoons honey*', '2 tbsp | honey'],
    ['6 drops vanilla', '6 drop | vanilla'],
  ])('%j', (line, read) => {
    expect(short(line)).toBe(read);
  });
});

describe('a pasted recipe', () => {
  test('keeps its title, headings and method out of the list', () => {
    const text =
      'Banana bread\nMakes 12 - 2 oz slices\n\nIngredients\n2 cups oats\n1 cup honey\n3 eggs, beaten\nDirections\n1. Bake at 350.';
    expect(splitLines(text, isFood)).toEqual({
      lines: ['2 cups oats', '1 cup honey', '3 eggs, beaten'],
      pieces: 12,
      title: 'Banana bread',
    });
  });

  test.each([
    ['servings: 25', 25],
    ['Number of Portions: 48', 48],
    ['(About 12 Servings)', 12],
    ['for 6 servings', 6],
    ['Yield: 8 Servings', 8],
    ['Makes 24 - 4 inch pancakes', 24],
  ])('reads its yield from %j', (said, pieces) => {
    expect(splitLines(`${said}\n2 cups oats\n1 cup honey\n1 cup milk`, isFood)).toMatchObject({
      lines: ['2 cups oats', '1 cup honey', '1 cup milk'],
      pieces,
    });
  });

  test('takes a comma for a new ingredient only where an amount follows, in a list of a line each', () => {
    const text = '1 cup oats, nuts or raisins\n2 tbsp honey\n1 egg, salt';
    expect(split(text)).toEqual(['1 cup oats, nuts or raisins', '2 tbsp honey', '1 egg, salt']);
  });
});
