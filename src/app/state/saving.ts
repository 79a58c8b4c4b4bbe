import { book, type Paper, restore } from "./book.ts";

const KEY = "mastwright.paper.1";
const LIGHT = "mastwright.light";
const SYSTEM = "mastwright.system";

/** Storage may be switched off, full or forbidden: every use may fail, and says so in plain words. */
const attempt = <T>(work: () => T): T | undefined => {
  try {
    return work();
  } catch {
    return undefined;
  }
};

export const loadSaved = () => {
  const text = attempt(() => localStorage.getItem(KEY));
  const system = attempt(() => localStorage.getItem(SYSTEM));
  const light = attempt(() => localStorage.getItem(LIGHT));
  if (system === "us" || system === "si") book.set({ system });
  if (light === "day" || light === "lamp") book.set({ light });
  if (!text) return;
  const kept = attempt(() => JSON.parse(text) as { paper: Paper; at: number });
  if (kept?.paper && restore(kept.paper)) book.set({ savedAt: kept.at });
  else
    book.set({
      trouble:
        "What was saved here last time can’t be read by this version; the starting study is open instead.",
    });
};

const save = (paper: Paper) => {
  const at = Date.now();
  const written = attempt(() => {
    localStorage.setItem(KEY, JSON.stringify({ paper, at }));
    return true;
  });
  if (written) book.set({ savedAt: at, trouble: null });
  else
    book.set({
      trouble:
        "This browser kept nothing: its storage is full or switched off. Save to a file, or the work is lost when this page closes.",
    });
};

export const saveEveryChange = () => {
  let kept = book.get().history.present;
  let timer: ReturnType<typeof setTimeout> | undefined;
  return book.subscribe(() => {
    const { history } = book.get();
    if (history.present === kept) return;
    kept = history.present;
    clearTimeout(timer);
    timer = setTimeout(() => save(kept), 400);
  });
};

export const keepLight = (light: "auto" | "day" | "lamp") =>
  attempt(() => localStorage.setItem(LIGHT, light));
export const keepSystem = (system: string) => attempt(() => localStorage.setItem(SYSTEM, system));

export const downloadText = (name: string, text: string, type: string) => {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
};

export const fileName = (title: string, ending: string): string =>
  `${
    title
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "") || "study"
  }.${ending}`;
