/**
 * Dishers (numbered scoops). The number is level scoops per US quart, so one holds exactly 32/N fl oz; the chart
 * cooks know rounds some of them. Chart values in teaspoons: ICN Basics at a Glance (U-21 to U-33).
 */
export const DISHERS = [
  { number: 6, chartTsp: 32, chartText: '2/3 cup' },
  { number: 8, chartTsp: 24, chartText: '1/2 cup' },
  { number: 10, chartTsp: 18, chartText: '3/8 cup' },
  { number: 12, chartTsp: 16, chartText: '1/3 cup' },
  { number: 16, chartTsp: 12, chartText: '1/4 cup' },
  { number: 20, chartTsp: 10, chartText: '3 1/3 Tbsp' },
  { number: 24, chartTsp: 8, chartText: '2 2/3 Tbsp' },
  { number: 30, chartTsp: 6, chartText: '2 Tbsp' },
  { number: 40, chartTsp: 5, chartText: '1 2/3 Tbsp' },
  { number: 50, chartTsp: 3.75, chartText: '3 3/4 tsp' },
  { number: 60, chartTsp: 3.25, chartText: '3 1/4 tsp' },
  { number: 70, chartTsp: 2.75, chartText: '2 3/4 tsp' },
  { number: 100, chartTsp: 2, chartText: '2 tsp' },
] as const;

export type DisherId = `disher_${(typeof DISHERS)[number]['number']}`;

/** Exact teaspoons of one level disher: 192 tsp to the quart, over its number. */
export const disherTsp = (number: number): number => 192 / number;
