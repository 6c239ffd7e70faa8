import { describe, expect, test } from 'vitest';
import { createRecipeIndex } from '../../src/nutrition/find-recipe.ts';
import type { Recipe } from '../../src/nutrition/recipe.ts';
import { plain, recipeOf } from '../book/cards.ts';

const recipe = (title: string, aliases: string[] = []): Recipe =>
  recipeOf(plain({ id: title, title, aliases }));

const index = createRecipeIndex([
  recipe('Oat bars', ['bars', 'oat bar', 'protein bars']),
  recipe('Cherry oat bars', ['cherry bars']),
  recipe('Sunflower cranberry bars', ['nut-free bars']),
  recipe('Berry overnight oats', ['overnight oats']),
  recipe('Peanut cocoa bites', ['bites', 'energy bites']),
]);

const found = (words: string) => {
  const match = index.find(words);
  if (match.kind === 'found') return match.recipe.title;
  return match.kind === 'ambiguous' ? match.recipes.map(({ title }) => title) : undefined;
};

describe('a recipe as typed', () => {
  test.each([
    ['bars', 'Oat bars'],
    ['the bars', 'Oat bars'],
    ['Oat-Bar', 'Oat bars'],
    ['OAT BARS!', 'Oat bars'],
    ['oat-bars', 'Oat bars'],
    ['cherry', 'Cherry oat bars'],
    ['cherry bar', 'Cherry oat bars'],
    ['nut free bars', 'Sunflower cranberry bars'],
    ['bite', 'Peanut cocoa bites'],
    ['overnight', 'Berry overnight oats'],
    ['chery bars', 'Cherry oat bars'],
    ['sunflwer bars', 'Sunflower cranberry bars'],
  ])('"%s" is %s', (words, title) => {
    expect(found(words)).toBe(title);
  });

  test('words that fit several recipes name them all', () => {
    expect(found('oat')).toEqual(['Oat bars', 'Cherry oat bars', 'Berry overnight oats']);
  });

  test.each(['', '   ', '!!!', 'lasagna', 'beef stew', 'x'.repeat(5000)])('"%s" is none of them', (words) => {
    expect(found(words)).toBeUndefined();
  });

  test('two recipes with the same alias are both offered', () => {
    const twins = createRecipeIndex([recipe('Date bars', ['the usual']), recipe('Fig bars', ['the usual'])]);
    expect(twins.find('the usual').kind).toBe('ambiguous');
  });

  test('a title outranks the same words as an alias of another recipe', () => {
    const both = createRecipeIndex([recipe('Oat bars'), recipe('Big bars', ['oat bars'])]);
    expect(both.find('oat bars')).toMatchObject({ kind: 'found', recipe: { title: 'Oat bars' } });
  });

  test('the nearest come best first and no more than asked for', () => {
    const near = index.nearest('chery cranbery', 2).map(({ title }) => title);
    expect(near).toHaveLength(2);
    expect(near.sort()).toEqual(['Cherry oat bars', 'Sunflower cranberry bars']);
  });

  test('every name is listed, with the recipe when only one answers to it', () => {
    expect(index.names().get('bar')).toBe('oat-bars');
    expect(index.names().get('overnight oat')).toBe('berry-overnight-oats');
  });
});
