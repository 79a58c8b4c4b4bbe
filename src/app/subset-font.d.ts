// The library ships no declarations; only what vite.config.ts calls is declared.
declare module "subset-font" {
  export default function subsetFont(
    font: Uint8Array,
    text: string,
    options: {
      readonly targetFormat: "woff2";
      readonly keepFeatures: readonly string[];
      readonly noHinting: boolean;
    },
  ): Promise<Uint8Array<ArrayBuffer>>;
}
