import { z } from "zod";

/** A schema as its own parts tell it: the kinds of zod, each with what it is made of. */
export type Form = z.core.$ZodTypes;

/** What a schema was told of itself: what a quantity measures, what a price is for. */
export const saidOf = (form: Form): Readonly<Record<string, unknown>> =>
  z.globalRegistry.get(form as unknown as z.ZodType) ?? {};

/** The forms that a value may take, as it is written: unions and defaults opened, quantities left whole. */
export const formsOf = (schema: z.core.$ZodType): readonly Form[] => {
  const form = schema as Form;
  const { def } = form._zod;
  const said = saidOf(form);
  if ("x-dimension" in said || "x-per" in said) return [form];
  if (def.type === "union") return def.options.flatMap(formsOf);
  if (def.type === "pipe") return formsOf(def.in);
  return "innerType" in def ? formsOf(def.innerType) : [form];
};

/** What may stand under a key: one schema, or none where the key is unknown. */
export const stepInto = (form: Form, key: PropertyKey): readonly Form[] => {
  const { def } = form._zod;
  if (def.type === "object") return Object.hasOwn(def.shape, key) ? [def.shape[String(key)] as Form] : [];
  if (def.type === "record") return [def.valueType as Form];
  if (def.type === "array") return [def.element as Form];
  if (def.type === "tuple") return [(def.items[Number(key)] ?? def.rest) as Form].filter(Boolean);
  return [];
};

/** The keys of an object, or of a record that has only certain ones. */
export const keysOf = (form: Form): readonly string[] => {
  const { def } = form._zod;
  if (def.type === "object") return Object.keys(def.shape);
  if (def.type === "record") return [...((def.keyType as Form)._zod.values ?? [])].map(String);
  return [];
};

/** Every key known at a path, over all forms that the value there may take. */
export const keysAt = (schema: z.core.$ZodType, path: readonly PropertyKey[]): string[] => {
  const ends = path.reduce<readonly Form[]>(
    (reached, key) => reached.flatMap((one) => stepInto(one, key)).flatMap(formsOf),
    formsOf(schema),
  );
  return [...new Set(ends.flatMap(keysOf))];
};
