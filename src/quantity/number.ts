const FRACTIONS: Record<string, string> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** Every minus, prime, quote and space that a word processor may have put in, made plain. */
export const plainText = (text: string): string =>
  text
    .replace(/[\u00a0\u2007\u2009\u200a\u202f]/g, " ")
    .replace(/[\u2212\u2012\u2013]/g, "-")
    .replace(/\u2044/g, "/")
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTIONS[sign]}`)
    .replace(/''|[\u2033\u201d\u201c"]/g, " in ")
    .replace(/[\u2032\u2019\u2018']/g, " ft ")
    .replace(/\s+/g, " ")
    .trim();

/** One number at the start: "2,914.5", "2 914.5", "1.2e-3", "3/16", "1 1/8" or "1-1/8". */
const NUMBER =
  /^([+-]?)\s?(?:(?:(\d+)[ -])?(\d+)\s?\/\s?(\d+)|((?:[1-9]\d{0,2}(?:,\d{3})+|[1-9]\d{0,2}(?: \d{3})+|\d+)(?:\.\d*)?(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?))(?![\d.,])/i;

/** The number that `text` starts with and what follows it; undefined where none does. Text is plain. */
export const leadingNumber = (text: string): { value: number; rest: string } | undefined => {
  const match = NUMBER.exec(text);
  if (!match) return undefined;
  const [all, sign, whole, over, under, decimal] = match;
  const value = over
    ? Number(whole ?? 0) + Number(over) / Number(under)
    : Number(decimal.replace(/[, ]/g, ""));
  if (!Number.isFinite(value)) return undefined;
  return { value: sign === "-" ? -value : value, rest: text.slice(all.length).trim() };
};
