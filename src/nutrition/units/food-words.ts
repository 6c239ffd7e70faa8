interface FoodWordRow {
  readonly id: string;
  readonly many: string;
  readonly spellings: readonly string[];
}

/** Measures that only a food gives a size: its own portion says how many grams one is. */
export const FOOD_WORDS = [
  { id: 'each', many: 'each', spellings: ['each', 'ea', 'whole', 'count', 'ct'] },
  { id: 'small', many: 'small', spellings: ['small', 'sm'] },
  { id: 'medium', many: 'medium', spellings: ['medium', 'med'] },
  { id: 'large', many: 'large', spellings: ['large', 'lg', 'lrg'] },
  { id: 'extra_large', many: 'extra large', spellings: ['extra large', 'xl'] },
  { id: 'jumbo', many: 'jumbo', spellings: ['jumbo'] },
  { id: 'stick', many: 'sticks', spellings: ['stick', 'sticks'] },
  { id: 'pat', many: 'pats', spellings: ['pat', 'pats'] },
  { id: 'slice', many: 'slices', spellings: ['slice', 'slices'] },
  { id: 'piece', many: 'pieces', spellings: ['piece', 'pieces', 'pc', 'pcs'] },
  { id: 'fruit', many: 'fruits', spellings: ['fruit', 'fruits'] },
  { id: 'clove', many: 'cloves', spellings: ['clove', 'cloves'] },
  { id: 'leaf', many: 'leaves', spellings: ['leaf', 'leaves'] },
  { id: 'bunch', many: 'bunches', spellings: ['bunch', 'bunches'] },
  { id: 'stalk', many: 'stalks', spellings: ['stalk', 'stalks'] },
  { id: 'sheet', many: 'sheets', spellings: ['sheet', 'sheets'] },
  { id: 'square', many: 'squares', spellings: ['square', 'squares'] },
  { id: 'block', many: 'blocks', spellings: ['block', 'blocks'] },
  { id: 'scoop', many: 'scoops', spellings: ['scoop', 'scoops', 'scp'] },
  { id: 'serving', many: 'servings', spellings: ['serving', 'servings', 'srv'] },
  { id: 'packet', many: 'packets', spellings: ['packet', 'packets', 'pkt', 'pkts', 'sachet', 'sachets'] },
  { id: 'package', many: 'packages', spellings: ['package', 'packages', 'pkg', 'pkgs', 'pack', 'packs'] },
  { id: 'container', many: 'containers', spellings: ['container', 'containers', 'tub', 'tubs'] },
  { id: 'carton', many: 'cartons', spellings: ['carton', 'cartons'] },
  { id: 'jar', many: 'jars', spellings: ['jar', 'jars'] },
  { id: 'can', many: 'cans', spellings: ['can', 'cans', 'tin', 'tins'] },
  { id: 'bottle', many: 'bottles', spellings: ['bottle', 'bottles', 'btl'] },
  { id: 'bag', many: 'bags', spellings: ['bag', 'bags'] },
  { id: 'box', many: 'boxes', spellings: ['box', 'boxes'] },
  { id: 'case', many: 'cases', spellings: ['case', 'cases'] },
] as const satisfies readonly FoodWordRow[];

export type FoodWordId = (typeof FOOD_WORDS)[number]['id'];
