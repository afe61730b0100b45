// What scripts say, in the language of the page: it brings their texts where that is not English.

const page = globalThis.document; // A worker has none, and says nothing.
const brought = page?.getElementById('said');
const { texts, decimalSign } = brought ? JSON.parse(brought.textContent) : { texts: {}, decimalSign: '.' };
const rules = new Intl.PluralRules(page?.documentElement.lang || 'en');

const filled = (text, holes) => text.replace(/\{(\d)\}/g, (_, hole) => holes[hole] ?? '');

/** A text by its English, which has a number in braces for each hole. */
export const t = (english, ...holes) => filled(texts[english] ?? english, holes);

/** One text for one and another for several, or as many as the language has; the first hole is the number. */
export function many(count, one, several, ...holes) {
  const forms = texts[`${one}|${several}`];
  return filled(forms ? forms[rules.select(count)] ?? forms.other : count === 1 ? one : several, [count, ...holes]);
}

/** A text with parts of the page in its holes. */
export const parts = (english, ...holes) => (texts[english] ?? english).split(/\{(\d)\}/).map((piece, i) => i % 2 ? holes[piece] : piece);

/** Several figures that stay in their order where all else runs from right to left. */
export const inOrder = figures => page?.documentElement.dir === 'rtl' ? `\u2066${figures}\u2069` : figures;

/** A number as the language writes it. */
export const number = (value, digits) => value.toFixed(digits).replace('.', decimalSign);
