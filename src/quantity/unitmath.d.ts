// The library ships no declarations for this build; only what `units.ts` calls is declared.
declare module "unitmath/dist/UnitMath.js" {
  interface ParsedUnit {
    /** Powers of mass, length, time, current, temperature, luminous intensity, amount, angle, bit, solid angle. */
    readonly dimension: readonly number[];
    /** Value in base units. */
    getNormalizedValue(): number;
  }
  interface UnitDefinition {
    value: string | number | [number, string];
    quantity?: string;
    prefixes?: string;
    aliases?: string[];
  }
  interface UnitMath {
    (value: number, unit: string): ParsedUnit;
    config(options: {
      definitions: {
        skipBuiltIns: boolean;
        quantities: Record<string, string>;
        unitSystems: Record<string, Record<string, string>>;
        prefixes: Record<string, Record<string, number>>;
        units: Record<string, UnitDefinition>;
      };
    }): UnitMath;
  }
  const unitmath: UnitMath;
  export default unitmath;
}
