import type { Dimension } from "../../quantity/dimensions.ts";

/**
 * What a figure is shown as. `feet` is feet and inches as a tape reads them, `lots` money, `share` a percentage,
 * `celsius` a temperature; the rest are dimensions of the boundary. `si` is always SI (temperatures in Celsius).
 */
export type As = Dimension | "feet" | "inches" | "money" | "share" | "celsius" | "count" | "degrees";

export interface Figure {
  readonly si: number;
  readonly as: As;
  readonly digits?: number;
  /** SI beside it, small. */
  readonly both?: boolean;
}
export type Cell = string | Figure;

export interface Table {
  readonly kind: "table";
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** A last row in weight: the sum. */
  readonly sum?: readonly Cell[];
  /** Rows in weight, by index: what governs, the reference. */
  readonly heavy?: readonly number[];
  /** Columns of words, by index; the others stand right. The first is always words. */
  readonly words?: readonly number[];
}
export interface Words {
  readonly kind: "words";
  readonly text: string;
  /** A warning: boxed. */
  readonly boxed?: boolean;
}
/** Steps ticked by hand, with room for a name and a date. */
export interface Ticks {
  readonly kind: "ticks";
  readonly steps: readonly string[];
}

/** Line weights and dashes of the printed drawings; mm in the style. */
export type Pen = "fine" | "thin" | "edge" | "cut" | "heavy";
export type Dash = "limit" | "frost" | "line" | "fall";
export type Fill = "ground" | "concrete" | "paper" | "ink";
export type Spot = readonly [x: number, y: number];

/** What a drawing is made of, in millimetres of paper, y down. */
export type Shape =
  | {
      readonly kind: "path";
      readonly points: readonly Spot[];
      readonly pen: Pen;
      readonly dash?: Dash;
      readonly closed?: boolean;
      readonly fill?: Fill;
    }
  | {
      readonly kind: "circle";
      readonly at: Spot;
      readonly radius: number;
      readonly pen: Pen;
      readonly dash?: Dash;
      readonly fill?: Fill;
    }
  | {
      readonly kind: "text";
      readonly at: Spot;
      readonly text: string;
      readonly anchor?: "start" | "middle" | "end";
      readonly turn?: number;
      readonly bold?: boolean;
    };

export interface Drawing {
  readonly kind: "drawing";
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

export interface Section {
  readonly title: string;
  readonly gloss?: string;
  readonly parts: readonly (Table | Words | Ticks | Drawing)[];
}

/** Sections one under another over the whole width, or in two columns. */
export type Band =
  | { readonly kind: "whole"; readonly sections: readonly Section[] }
  | { readonly kind: "pair"; readonly left: readonly Section[]; readonly right: readonly Section[] };

/** One sheet of paper for one subject: plain data, shown by any shell. */
export interface Sheet {
  readonly id: "buy" | "dig" | "raise" | "tension" | "calculation";
  readonly title: string;
  readonly number: number;
  readonly of: number;
  readonly study: string;
  /** Short hash of the design's key: sheets of one design share it. */
  readonly design: string;
  readonly currency: string;
  readonly bands: readonly Band[];
  readonly foot: readonly string[];
}
