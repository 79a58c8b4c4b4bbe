import { useMemo, useRef, useState } from "react";
import { compile } from "../../problem/compile.ts";
import { renderSheets } from "../../report/sheets/render.ts";
import { sheets } from "../../report/sheets/sheets.ts";
import type { Judged } from "../../search/types.ts";
import { svgText } from "../drawings/svg-text.ts";
import type { Reading } from "../state/book.ts";
import { downloadText, fileName } from "../state/files.ts";
import { useAnswer } from "./answer.tsx";

/** What the crew takes along: the same paper that the command line writes, in a frame of its own. */
const SheetsView = () => {
  const answer = useAnswer();
  if (
    (answer.kind === "proven" || answer.kind === "stopped") &&
    answer.best?.verdict.passes &&
    !answer.former
  )
    return <Paper reading={answer.reading} judged={answer.best} />;
  const unsafe = answer.kind === "none-safe" || answer.kind === "unsafe";
  return (
    <main className="reason">
      {unsafe
        ? "✕ No sheets: nothing here passes every check. Don’t build it."
        : "No sheets yet: they come when the search has ended."}
    </main>
  );
};
export default SheetsView;

const Paper = ({ reading, judged }: { reading: Reading; judged: Judged }) => {
  const frame = useRef<HTMLIFrameElement>(null);
  const [drawings, setDrawings] = useState<readonly SVGSVGElement[]>([]);
  const html = useMemo(
    () => renderSheets(sheets(compile(reading.study, reading.catalog), judged.design, judged.verdict)),
    [reading, judged],
  );
  return (
    <main>
      <h1>What does the crew take along?</h1>
      <p style={{ margin: "12px 0" }}>
        <button type="button" className="btn" onClick={() => frame.current?.contentWindow?.print()}>
          Print five sheets
        </button>{" "}
        at full size, not fitted to the page: the drawings are to scale.
      </p>
      {drawings.length > 0 && (
        <details className="how">
          <summary className="link">Save a drawing as SVG</summary>
          <ul className="plain">
            {drawings.map((svg) => (
              <li key={svg.getAttribute("aria-label")}>
                <button
                  type="button"
                  className="link"
                  onClick={() =>
                    downloadText(
                      fileName(`${reading.study.name} ${svg.getAttribute("aria-label")}`, "svg"),
                      svgText(svg),
                      "image/svg+xml",
                    )
                  }
                >
                  {svg.getAttribute("aria-label")}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
      <iframe
        ref={frame}
        title="Five sheets for the crew"
        srcDoc={bare(html)}
        onLoad={() => {
          const page = frame.current?.contentDocument;
          dress(page, html);
          setDrawings([...(page?.querySelectorAll<SVGSVGElement>('svg[role="img"]') ?? [])]);
        }}
        sandbox="allow-same-origin allow-modals"
        style={{ width: "100%", height: "80vh", border: "1.5px solid var(--ink)", background: "#fff" }}
      />
    </main>
  );
};

/** The page's policy bars styles written into a document; they are put on from here once it is there. */
const STYLE = /<style>([\s\S]*?)<\/style>/;
const bare = (html: string): string => html.replace(STYLE, "").replaceAll(' style="', ' data-style="');
const dress = (paper: Document | null | undefined, html: string) => {
  if (!paper?.defaultView) return;
  const sheet = new (paper.defaultView as Window & typeof globalThis).CSSStyleSheet();
  sheet.replaceSync(STYLE.exec(html)?.[1] ?? "");
  paper.adoptedStyleSheets = [sheet];
  for (const part of paper.querySelectorAll<HTMLElement>("[data-style]"))
    part.style.cssText = part.dataset.style ?? "";
};
