import type { Highs } from 'highs';

/** A linear model in columns: minimize cost, keep every row and column within its bounds. */
export interface LinearModel {
  readonly cost: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  /** Columns that take whole numbers only. */
  readonly whole?: ReadonlySet<number>;
  /** A whole-number search may stop within this share of the best; 0 unless said. */
  readonly gap?: number;
  readonly rows: readonly {
    readonly columns: readonly number[];
    readonly values: readonly number[];
    readonly least: number;
    readonly most: number;
  }[];
}

/** The best columns of a model; `undefined` when nothing keeps all bounds, or none was found in the search allowed. */
export type LinearSolver = (model: LinearModel) => readonly number[] | undefined;

/**
 * Whole-number searches stop here with the best found: an answer in a chat is not worth longer. Counted in branches and
 * not in seconds, so that the same question gets the same answer on a busy machine.
 */
const MOST_BRANCHES = 500;
/** A search that hangs in its first branch is given up; no question of a kitchen was seen to come near. */
const MOST_S = 20;

let loading: Promise<LinearSolver> | undefined;

/** The HiGHS solver, loaded at the first call and kept: it is 4 MB of WebAssembly that most requests never need. */
export function linearSolver(): Promise<LinearSolver> {
  loading ??= load().catch((error: unknown) => {
    loading = undefined;
    throw error;
  });
  return loading;
}

/** The package declares itself CommonJS while its import condition is a module: the type of its default is one too deep. */
async function load(): Promise<LinearSolver> {
  const { default: start } = await import('highs');
  return solverOf(await (start as unknown as typeof start.default)());
}

const solverOf =
  (highs: Highs): LinearSolver =>
  (model) => {
    const solving = highs.createModel();
    try {
      solving.options.set({
        output_flag: false,
        mip_max_nodes: MOST_BRANCHES,
        time_limit: MOST_S,
        mip_rel_gap: model.gap ?? 0,
      });
      solving.passModel(modelData(highs, model));
      solving.run();
      const { optimal, timeLimit, solutionLimit } = highs.constants.modelStatus;
      const status = solving.getModelStatus();
      if (status !== optimal && status !== timeLimit && status !== solutionLimit) return undefined;
      const solution = solving.getSolution();
      return status === optimal || keepsAll(model, solution.colValue) ? [...solution.colValue] : undefined;
    } finally {
      solving.dispose();
    }
  };

/** What was found when the search was cut off need not be a solution at all. */
function keepsAll(model: LinearModel, columns: ArrayLike<number>): boolean {
  return model.rows.every(({ columns: at, values, least, most }) => {
    const sum = at.reduce((all, column, i) => all + (values[i] ?? 0) * (columns[column] ?? 0), 0);
    const slack = 1e-6 * Math.max(1, Math.abs(sum));
    return sum >= least - slack && sum <= most + slack;
  });
}

function modelData(highs: Highs, { cost, lower, upper, whole, rows }: LinearModel) {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of rows) {
    indices.push(...row.columns);
    values.push(...row.values);
    starts.push(indices.length);
  }
  const { integer, continuous } = highs.constants.variableType;
  return {
    numCols: cost.length,
    numRows: rows.length,
    colCost: cost,
    colLower: lower,
    colUpper: upper,
    rowLower: rows.map(({ least }) => least),
    rowUpper: rows.map(({ most }) => most),
    matrix: {
      format: 'csr' as const,
      numRows: rows.length,
      numCols: cost.length,
      starts,
      indices,
      values,
    },
    ...(whole && whole.size > 0
      ? { integrality: cost.map((_, at) => (whole.has(at) ? integer : continuous)) }
      : {}),
  };
}
