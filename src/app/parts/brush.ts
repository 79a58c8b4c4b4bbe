import { plots } from "../state/plots.ts";

/**
 * Point at, or focus, whatever stands for a design, and everything else on the page that stands for the same one is
 * marked with it. A page's ref: one listener and an attribute, past React, so that a plot of thousands of marks is
 * not drawn anew.
 */
export const brush = (page: HTMLElement) => {
  let now: string | undefined;
  const show = (key: string | undefined) => {
    if (key === now) return;
    now = key;
    page.classList.toggle("brushing", key !== undefined);
    for (const mark of page.querySelectorAll<SVGElement | HTMLElement>("[data-design]"))
      mark.toggleAttribute("data-brushed", key !== undefined && mark.dataset.design === key);
  };
  const enter = ({ target }: Event) =>
    show((target as Element).closest<HTMLElement>("[data-design]")?.dataset.design);
  const leave = () => show(undefined);
  const unpin = ({ key, target }: KeyboardEvent) => {
    if (key !== "Escape" || (target as Element).closest("input, select")) return;
    leave();
    plots.set({ taken: null });
  };
  page.addEventListener("mouseover", enter);
  page.addEventListener("mouseleave", leave);
  page.addEventListener("focusin", enter);
  page.addEventListener("focusout", leave);
  // a ring that is drawn anew may lose the focus: the key is heard wherever it is
  document.addEventListener("keydown", unpin);
  return () => {
    page.removeEventListener("mouseover", enter);
    page.removeEventListener("mouseleave", leave);
    page.removeEventListener("focusin", enter);
    page.removeEventListener("focusout", leave);
    document.removeEventListener("keydown", unpin);
  };
};
