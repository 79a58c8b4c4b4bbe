import { availableParallelism } from "node:os";
import { DesignError } from "../checks/resolve.ts";
import { type Arguments, readArguments, UsageError, usage } from "./arguments.ts";
import {
  find,
  front,
  reference,
  reliabilityCommand,
  rulesCommand,
  type Said,
  schema,
  verifyCommand,
} from "./commands.ts";
import { compareCommand } from "./compare.ts";
import { sheetsCommand } from "./sheets.ts";

/** One command, its words on stdout or its complaint on stderr; returns the exit code. */
async function run(argv: readonly string[]): Promise<number> {
  try {
    const args = readArguments(argv, availableParallelism());
    const said = await command(args);
    // Infinity is not JSON: a bound or gap that nothing safe gives yet is written as null
    process.stdout.write(args.json ? `${JSON.stringify(said.data)}\n` : `${said.text}\n`);
    return said.exit;
  } catch (error) {
    if (error instanceof UsageError || error instanceof DesignError) {
      process.stderr.write(`${error.message}\n`);
      return 2;
    }
    throw error;
  }
}

function command(args: Arguments): Promise<Said> | Said {
  switch (args.command) {
    case "find":
      return find(args);
    case "front":
      return front(args);
    case "verify":
      return verifyCommand(args);
    case "rules":
      return rulesCommand(args);
    case "compare":
      return compareCommand(args);
    case "reliability":
      return reliabilityCommand(args);
    case "reference":
      return reference(args);
    case "schema":
      return schema();
    case "sheets":
      return sheetsCommand(args);
    case "help":
      return { text: usage, data: usage, exit: 0 };
    default:
      throw new UsageError(
        `found command "${args.command}", expected one of find, front, verify, rules, compare, reliability, sheets, reference, schema\n\n${usage}`,
      );
  }
}

process.exitCode = await run(process.argv.slice(2));
