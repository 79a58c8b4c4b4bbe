import { book, type Page, pages } from "./book.ts";

const numbered = pages.map(({ id }) => id);
const known: readonly Page[] = [...numbered, "studies"];

/** A link carries its study behind this mark, where no server ever sees it. */
export const LINK_MARK = "#/study/";

/** The address holds the page, so that a link or a reload comes back to it. */
export const followAddress = () => {
  const read = () => {
    const page = location.hash.slice(2) as Page;
    if (known.includes(page)) book.set({ page });
    else if (location.hash.startsWith(LINK_MARK)) book.set({ page: "studies" });
    else if (location.hash === "" || location.hash === "#/") book.set({ page: "answer" });
  };
  read();
  window.addEventListener("hashchange", read);
};
export const turnTo = (page: Page) => {
  location.hash = `/${page}`;
};

/** The page numbers are its keys, except where something is being typed. */
export const followKeys = (actions: { undo: () => void; redo: () => void }) => {
  window.addEventListener("keydown", (event) => {
    const target = event.target as HTMLElement;
    const typing = target.closest("input, select, textarea, [contenteditable]");
    if (typing) return;
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z") {
      event.preventDefault();
      (event.shiftKey ? actions.redo : actions.undo)();
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const page = numbered[Number(event.key) - 1];
    if (page) turnTo(page);
    if (event.key === "Escape") book.set({ pointed: null });
  });
};
