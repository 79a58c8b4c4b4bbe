import type { RefObject } from "react";
import { useBook } from "../state/book.ts";
import { downloadText, fileName } from "../state/files.ts";

/** Under a drawing: takes it along as it is. */
export const SaveSvg = ({ svg, name }: { svg: RefObject<SVGSVGElement | null>; name: string }) => {
  const study = useBook((state) => state.history.present.study.name);
  return (
    <button
      type="button"
      className="link no-print save-svg"
      onClick={async () => {
        const { svgText } = await import("../drawings/svg-text.ts");
        if (svg.current)
          downloadText(fileName(`${study} ${name}`, "svg"), svgText(svg.current), "image/svg+xml");
      }}
    >
      Save the {name} as SVG
    </button>
  );
};
