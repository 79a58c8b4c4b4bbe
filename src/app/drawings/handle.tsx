import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef } from "react";
import { useGesture } from "../parts/gesture.ts";

interface Props {
  readonly x: number;
  readonly y: number;
  /** What it is and where, for who can't see it. */
  readonly name: string;
  /** The pointer has drawn it here, px in the drawing. */
  readonly onDrag: (x: number, y: number, fine: boolean, gesture: string) => void;
  /** An arrow key: right and up are 1, left and down −1. */
  readonly onStep: (right: number, up: number, fine: boolean, gesture: string) => void;
  readonly onHold?: (held: boolean) => void;
  readonly children: ReactNode;
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Half of the square that a finger has to hit, px. */
const REACH = 14;

/** Something in a drawing that can be taken hold of, with a pointer or with the arrow keys. */
export const Handle = ({ x, y, name, onDrag, onStep, onHold, children }: Props) => {
  const gesture = useGesture();
  const grip = useRef<{ dx: number; dy: number } | null>(null);
  const at = (event: PointerEvent<SVGGElement>) => {
    const box = event.currentTarget.ownerSVGElement!.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top] as const;
  };
  const down = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0) return;
    const [px, py] = at(event);
    grip.current = { dx: x - px, dy: y - py };
    event.currentTarget.setPointerCapture(event.pointerId);
    gesture.start();
    onHold?.(true);
  };
  const move = (event: PointerEvent<SVGGElement>) => {
    if (!grip.current) return;
    const [px, py] = at(event);
    onDrag(px + grip.current.dx, py + grip.current.dy, event.shiftKey, gesture.current());
  };
  const up = () => {
    if (!grip.current) return;
    grip.current = null;
    gesture.end();
    onHold?.(false);
  };
  const key = (event: KeyboardEvent) => {
    const arrow = arrows[event.key];
    if (!arrow || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    onStep(arrow[0], arrow[1], event.shiftKey, gesture.key());
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no element that is a button
    <g
      role="button"
      tabIndex={0}
      aria-label={name}
      className="handle"
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={up}
      onKeyDown={key}
    >
      <rect x={x - REACH} y={y - REACH} width={2 * REACH} height={2 * REACH} className="halo-ring" />
      {children}
    </g>
  );
};
