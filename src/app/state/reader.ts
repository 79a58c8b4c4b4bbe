type Reader = typeof import("../../model/parse.ts");

let reader: Reader | null = null;
let coming: Promise<void> | null = null;

/** Before the next piece of work: what the hand does meanwhile is heard. */
export const breathe = () => new Promise((resolve) => setTimeout(resolve));

/**
 * The parser and its schemas are the most that the page runs before it can show anything: they come in pieces, after
 * the first words are drawn. Nothing can be edited before there is a reading, and none is made before they are here.
 */
export const readerComes = (): Promise<void> =>
  (coming ??= (async () => {
    // one after the other: asked for together, the first that is whole would run all that it needs
    await import("../../model/steel-rows.ts");
    await breathe();
    reader = await import("../../model/parse.ts");
    await breathe();
  })());

/** @throws Error before it has come */
export const theReader = (): Reader => {
  if (!reader) throw new Error("the parser was asked before it had come: wait for readerComes()");
  return reader;
};
