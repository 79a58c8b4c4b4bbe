import { type RefObject, useEffect, useMemo, useState } from "react";
import { placed, type Quad } from "./clear.ts";
import type { Frame } from "./frame.ts";
import { Balloon, balloonSpots } from "./loads.tsx";
import type { Scene } from "./scene.ts";

/** Between a drawing and the measuring of its words, ms: an answer that still gets better follows sooner. */
const AFTER = 120;

interface Props {
  readonly scene: Scene;
  readonly frame: Frame;
  readonly paper: RefObject<SVGSVGElement | null>;
  readonly pointed: string | null;
}

/** The numbers of the checks, each where it belongs and where no word stands: words are measured once drawn. */
export const Balloons = ({ scene, frame, paper, pointed }: Props) => {
  const wanted = useMemo(() => balloonSpots(scene, frame), [scene, frame]);
  const [found, setFound] = useState<{ of: typeof wanted; places: ReturnType<typeof placed> } | null>(null);
  const places = found?.of === wanted ? found.places : null;
  useEffect(() => {
    let gone = false;
    const place = () => {
      const svg = paper.current;
      if (svg && !gone)
        setFound({
          of: wanted,
          places: placed(wanted, { width: frame.width, height: frame.height, ...drawnOn(svg) }),
        });
    };
    // measured when the page has time: a drawing that is followed by a better one is not. Lettering that arrives late
    // is wider or narrower than what stood in for it.
    document.fonts.ready.then(() => setTimeout(place, AFTER));
    return () => {
      gone = true;
    };
  }, [wanted, frame, paper]);
  return (
    // not seen before it has its first places: it would flash over the words
    <g className="balloons" data-placed={places ? "" : undefined} visibility={found ? undefined : "hidden"}>
      {wanted.map(({ id, number, governs, first }) => {
        const [x, y] = places?.get(id) ?? found?.places.get(id) ?? first;
        return (
          <g key={id} className={pointed === id ? "pointed" : undefined}>
            <Balloon x={x} y={y} number={number} governs={governs} />
          </g>
        );
      })}
    </g>
  );
};

const quadOf = (element: SVGGraphicsElement): Quad => {
  const { x, y, width, height } = element.getBBox();
  const turn = element.getCTM();
  const corners = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ] as const;
  return corners.map(([px, py]) =>
    turn
      ? ([turn.a * px + turn.c * py + turn.e, turn.b * px + turn.d * py + turn.f] as const)
      : ([px, py] as const),
  );
};

/** Every word of the drawing but the numbers themselves, what must stay in sight, and the numbers that others have drawn. */
const drawnOn = (svg: SVGSVGElement) => {
  const words = [...svg.querySelectorAll<SVGGraphicsElement>("text, .keep")]
    .filter((element) => !element.closest(".balloon"))
    .map(quadOf);
  const taken = [...svg.querySelectorAll<SVGCircleElement>(".balloon > circle")]
    .filter((circle) => !circle.closest(".balloons"))
    .map((circle) => [circle.cx.baseVal.value, circle.cy.baseVal.value] as const);
  return { words, taken };
};
