/** Reads the givens of an outside case; what is missing or odd is refused by name, as a RangeError. */
export class GivenReader {
  readonly #input: Readonly<Record<string, unknown>>;

  constructor(input: Readonly<Record<string, unknown>>) {
    this.#input = input;
  }

  has(name: string): boolean {
    return this.#input[name] !== undefined && this.#input[name] !== null;
  }

  number(name: string): number {
    const value = this.#input[name];
    if (typeof value === "number" && Number.isFinite(value)) return value;
    throw this.#refusal(name, "a number");
  }

  numbers(name: string): readonly number[] {
    const value = this.#input[name];
    if (Array.isArray(value) && value.every((item) => typeof item === "number")) return value;
    throw this.#refusal(name, "a list of numbers");
  }

  text(name: string): string {
    const value = this.#input[name];
    if (typeof value === "string") return value;
    throw this.#refusal(name, "text");
  }

  oneOf<const T extends string | number>(name: string, choices: readonly T[]): T {
    const found = choices.find((choice) => choice === this.#input[name]);
    if (found !== undefined) return found;
    throw this.#refusal(name, `one of ${choices.join(", ")}`);
  }

  #refusal(name: string, expected: string): RangeError {
    return new RangeError(`input.${name}: found ${JSON.stringify(this.#input[name])}, expected ${expected}`);
  }
}
