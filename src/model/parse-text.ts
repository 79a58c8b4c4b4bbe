import { readJson } from "./json-text.ts";
import { parseDesign, parseStudy } from "./parse.ts";

/** A study from the text of its file; a slip of the JSON is refused with its place. */
export const studyFromText = (
  text: string,
  options: Parameters<typeof parseStudy>[1],
): ReturnType<typeof parseStudy> => {
  const file = readJson(text);
  return file.ok ? parseStudy(file.value, options) : file;
};

/** A design from the text of its file. */
export const designFromText = (
  text: string,
  known?: Parameters<typeof parseDesign>[1],
): ReturnType<typeof parseDesign> => {
  const file = readJson(text);
  return file.ok ? parseDesign(file.value, known) : file;
};
