/** A piece of the message: a word, a number, an address or a sign. */
export interface Token {
  readonly kind: 'word' | 'number' | 'url' | 'code' | 'sign';
  /** As typed, case kept. */
  readonly raw: string;
  /** Lower case, without apostrophes. */
  readonly typed: string;
  /** `typed` with its spelling put right. */
  word: string;
  /** True when white space stands before it. */
  readonly spaced: boolean;
}

const TOKEN =
  /(\s*)(?:((?:https?|webcals?):\/\/\S+)|([A-Za-z]{1,3}-?\d+[A-Za-z0-9-]*)|(\d{4}-\d\d-\d\d|\d{1,3}(?:,\d{3})+|\d+(?:[:./]\d+)*(?:e\d+)?|\.\d+)|([A-Za-z]+(?:'[A-Za-z]+)*)|(\S))/g;

/** Apostrophe-s words that are verbs, not owners: "what's" is read "whats". */
const CONTRACTION = /^(what|it|he|she|who|that|there|here|how|where|when|let|everyone|someone)'s$/;

/** Most tokens of one message that are looked at: one for each character of the longest. */
const MOST_TOKENS = 4_000;

/** Cuts a normalized message into tokens; glued ones ("40bars", "250g", "fridge2") come apart. */
export function tokenize(text: string): Token[] {
  const tokens: Token[] = [];
  TOKEN.lastIndex = 0;
  for (let match = TOKEN.exec(text); match && tokens.length < MOST_TOKENS; match = TOKEN.exec(text)) {
    const [, space, url, code, number, word, sign] = match;
    const spaced = space !== '';
    if (word !== undefined) tokens.push(wordToken(word, spaced));
    else if (number !== undefined) tokens.push(plain('number', number, spaced));
    else if (code !== undefined) pushCode(tokens, code, spaced);
    else if (url !== undefined) tokens.push(plain('url', url, spaced));
    else if (sign !== undefined) tokens.push(plain('sign', sign, spaced));
  }
  return tokens;
}

function wordToken(raw: string, spaced: boolean): Token {
  let typed = raw.toLowerCase();
  if (typed === "od'd") typed = 'overdosed';
  else if (typed.includes("'")) {
    typed = typed.endsWith("'s") && !CONTRACTION.test(typed) ? typed.slice(0, -2) : typed.replace(/'/g, '');
  }
  return { kind: 'word', raw, typed, word: typed, spaced };
}

function plain(kind: Token['kind'], raw: string, spaced: boolean): Token {
  const typed = raw.toLowerCase();
  return { kind, raw, typed, word: typed, spaced };
}

/** "x2" is a factor, "dec5" a date, "B12" a vitamin, "L42" and "WP-07" are codes. */
function pushCode(tokens: Token[], raw: string, spaced: boolean): void {
  const low = raw.toLowerCase();
  const parts = /^(x|dec|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|at|by|to|for|no)(\d+)$/.exec(low);
  if (!parts || (parts[1] === 'no' && !/^\d/.test(parts[2] ?? ''))) {
    tokens.push(plain('code', raw, spaced));
    return;
  }
  tokens.push(plain('word', raw.slice(0, parts[1]?.length), spaced));
  tokens.push(plain('number', parts[2] ?? '', false));
}
