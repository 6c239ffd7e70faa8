import type { Food } from '../../../nutrition/food.ts';
import { kitchenMeasure } from '../../../nutrition/measure/kitchen-measure.ts';

/** A measure somebody can take, and the grams: "1/4 cup (64 g)"; grams alone where the food has no measure. */
export function amountText(food: Food, massG: number): string {
  const grams = `${massG < 10 ? massG.toFixed(1) : Math.round(massG)} g`;
  if (food.portions.length === 0) return grams;
  const { text } = kitchenMeasure(food, massG);
  return / (g|oz|lb|kg)\b/.test(text) ? grams : `${text} (${grams})`;
}
