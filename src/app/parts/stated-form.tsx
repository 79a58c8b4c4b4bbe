import { useId, useState } from "react";
import type { Fault } from "../state/book.ts";
import type { Typed } from "../wording/given.ts";
import type { Part, StatedProps, Values } from "./stated.tsx";

/** The fields of what takes several numbers to say, taken whole. */
const StatedForm = ({ label, parts, write, remove, note, close }: StatedProps & { close: () => void }) => {
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries<string>(
      parts.map(({ key, start, options }) => [key, start || (options?.[0]?.value ?? "")]),
    ),
  );
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});
  /** What was refused, at the field it is about where there is one. */
  const refuse = (faults: readonly Fault[]) => {
    if (faults.length === 0) return close();
    const keyOf = ({ path }: Fault) => parts.find(({ key }) => path.endsWith(`.${key}`))?.key ?? "";
    setErrors(Object.fromEntries<string>(faults.map((fault) => [keyOf(fault), fault.message])));
  };
  const take = () => {
    const read = readAll(parts, texts);
    if ("errors" in read) setErrors(read.errors);
    else refuse(write(read.values));
  };
  return (
    <form
      className="stated no-print"
      aria-label={label}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
      onKeyDown={(event) => event.key === "Escape" && close()}
    >
      {parts.map((part, i) => (
        <Field
          key={part.key}
          part={part}
          first={i === 0}
          text={texts[part.key]}
          error={errors[part.key]}
          put={(text) => setTexts({ ...texts, [part.key]: text })}
        />
      ))}
      {note && <p className="quiet">{note}</p>}
      {errors[""] && (
        <p role="alert">
          <b>✕ {errors[""]}</b>
        </p>
      )}
      <p>
        <button type="submit" className="btn">
          Take
        </button>
        {remove && (
          <button type="button" className="link" onClick={() => refuse(write(undefined))}>
            {remove}
          </button>
        )}
        <button type="button" className="link" onClick={close}>
          Leave as it is
        </button>
      </p>
    </form>
  );
};

const readAll = (
  parts: readonly Part[],
  texts: Readonly<Record<string, string>>,
): { readonly errors: Readonly<Record<string, string>> } | { readonly values: Values } => {
  const values: Record<string, string | number> = {};
  const errors: Record<string, string> = {};
  for (const { key, read, as = "text", optional, options, label, example } of parts) {
    const text = texts[key].trim();
    if (options) values[key] = text;
    else if (text === "") {
      if (!optional) errors[key] = `${label} is missing${example ? `; write it as “${example}”` : ""}.`;
    } else {
      const typed: Typed = read ? read(text) : { ok: true, text, si: 0 };
      if (typed.ok) values[key] = as === "number" ? typed.si : typed.text;
      else errors[key] = typed.message;
    }
  }
  return Object.keys(errors).length > 0 ? { errors } : { values };
};

interface FieldProps {
  readonly part: Part;
  readonly first: boolean;
  readonly text: string;
  readonly error: string | undefined;
  readonly put: (text: string) => void;
}
const Field = ({ part, first, text, error, put }: FieldProps) => {
  const id = useId();
  const shared = {
    id,
    value: text,
    "aria-invalid": error !== undefined,
    "aria-describedby": error ? `${id}-why` : undefined,
    // the user has just asked for this form
    autoFocus: first,
  };
  return (
    <>
      <label htmlFor={id}>
        {part.label}
        {part.optional && <small className="quiet"> if any</small>}
      </label>
      {part.options ? (
        <select className="ed choice" {...shared} onChange={(event) => put(event.target.value)}>
          {part.options.map(({ value, name }) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </select>
      ) : (
        <input
          className="field"
          {...shared}
          placeholder={part.example && `as ${part.example}`}
          onChange={(event) => put(event.target.value)}
        />
      )}
      {error && (
        <p id={`${id}-why`} role="alert" className="why">
          <b>✕ {error}</b>
        </p>
      )}
    </>
  );
};

export default StatedForm;
