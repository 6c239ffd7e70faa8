interface NutrientFact {
  readonly key: string;
  /** The word used in requests, slots and answers. */
  readonly name: string;
  readonly unit: 'kcal' | 'g' | 'mg' | 'mcg';
  /** Spellings a person types, lower case, besides `name`. */
  readonly spellings: readonly string[];
}

/** The nutrients the engine carries. Values are always per 100 g on a food, and totals elsewhere, in `unit`. */
export const NUTRIENTS = [
  {
    key: 'energyKcal',
    name: 'energy',
    unit: 'kcal',
    spellings: ['calories', 'calorie', 'cals', 'cal', 'kcal', 'kcals'],
  },
  { key: 'proteinG', name: 'protein', unit: 'g', spellings: ['prot', 'pro', 'proteins'] },
  {
    key: 'carbohydrateG',
    name: 'carbohydrate',
    unit: 'g',
    spellings: ['carbs', 'carb', 'carbohydrates', 'cho'],
  },
  { key: 'fatG', name: 'fat', unit: 'g', spellings: ['fats', 'total fat', 'lipid'] },
  {
    key: 'fiberG',
    name: 'fiber',
    unit: 'g',
    spellings: ['fibre', 'dietary fiber', 'dietary fibre', 'roughage'],
  },
  { key: 'sugarsG', name: 'sugars', unit: 'g', spellings: ['sugar', 'total sugars', 'total sugar'] },
  { key: 'sodiumMg', name: 'sodium', unit: 'mg', spellings: ['na', 'salt content'] },
  { key: 'saturatedFatG', name: 'saturated fat', unit: 'g', spellings: ['sat fat', 'sat', 'saturates'] },
  { key: 'addedSugarsG', name: 'added sugars', unit: 'g', spellings: ['added sugar'] },
  { key: 'cholesterolMg', name: 'cholesterol', unit: 'mg', spellings: ['chol'] },
  { key: 'potassiumMg', name: 'potassium', unit: 'mg', spellings: ['potass'] },
  { key: 'calciumMg', name: 'calcium', unit: 'mg', spellings: ['ca'] },
  { key: 'ironMg', name: 'iron', unit: 'mg', spellings: ['fe'] },
  { key: 'magnesiumMg', name: 'magnesium', unit: 'mg', spellings: ['mg content'] },
  { key: 'phosphorusMg', name: 'phosphorus', unit: 'mg', spellings: [] },
  { key: 'zincMg', name: 'zinc', unit: 'mg', spellings: [] },
  { key: 'vitaminDMcg', name: 'vitamin D', unit: 'mcg', spellings: ['vit d', 'vitamin d'] },
  { key: 'vitaminCMg', name: 'vitamin C', unit: 'mg', spellings: ['vit c', 'vitamin c'] },
  { key: 'vitaminAMcg', name: 'vitamin A', unit: 'mcg', spellings: ['vit a', 'vitamin a'] },
  { key: 'folateMcg', name: 'folate', unit: 'mcg', spellings: ['folic acid'] },
  { key: 'vitaminB12Mcg', name: 'vitamin B12', unit: 'mcg', spellings: ['b12', 'vit b12', 'vitamin b12'] },
  { key: 'leucineG', name: 'leucine', unit: 'g', spellings: ['leu'] },
  { key: 'monounsaturatedFatG', name: 'monounsaturated fat', unit: 'g', spellings: ['mono fat'] },
  { key: 'polyunsaturatedFatG', name: 'polyunsaturated fat', unit: 'g', spellings: ['poly fat'] },
  { key: 'waterG', name: 'water', unit: 'g', spellings: ['moisture'] },
] as const satisfies readonly NutrientFact[];

export type NutrientKey = (typeof NUTRIENTS)[number]['key'];

/** Amounts by nutrient. A key that is missing is unknown; it is never zero. */
export type Nutrients = { readonly [K in NutrientKey]?: number };
