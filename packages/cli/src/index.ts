import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { text } from 'node:stream/consumers';
import { CHECK_USAGE, check } from './command/check.js';
import { CUT_USAGE, cut } from './command/cut.js';
import { CUT_FILES_USAGE, cutFilesOf } from './command/cut-files.js';
import { GUIDES_USAGE, guides } from './command/guides.js';
import { HANDOUT_USAGE, handout } from './command/handout.js';
import { IMPORT_USAGE, importPieces } from './command/import.js';
import type { ReadText, WriteBytes, WriteText } from './command/input.js';
import { MIX_USAGE, mix } from './command/mix.js';
import { NEAR_MISSES_USAGE, nearMissesOf } from './command/near-misses.js';
import { UsageError } from './command/options.js';
import { BAD_INPUT, misused, type Outcome, printed } from './command/outcome.js';
import { PICTURE_USAGE, picture } from './command/picture.js';
import { PIECES_USAGE, pieces } from './command/pieces.js';
import { PLAN_USAGE, plan } from './command/plan.js';
import { STEPS_USAGE, steps } from './command/steps.js';
import { YIELD_USAGE, yieldOf } from './command/yield.js';

type Command = (
  args: readonly string[],
  readText: ReadText,
  writeText: WriteText,
  writeBytes: WriteBytes,
) => Promise<Outcome>;

const COMMANDS: Readonly<Record<string, { readonly run: Command; readonly usage: string; readonly what: string }>> = {
  plan: { run: plan, usage: PLAN_USAGE, what: 'the cutting guide of a sketch for a whole batch' },
  pieces: {
    run: pieces,
    usage: PIECES_USAGE,
    what: 'the piece list of a card, of a batch, by paper, or by setting of the trimmer',
  },
  import: { run: importPieces, usage: IMPORT_USAGE, what: 'a new sketch from a piece list as CSV' },
  picture: {
    run: picture,
    usage: PICTURE_USAGE,
    what: 'a card, a batch or a cutting guide as PNG or SVG for a page or a post',
  },
  guides: { run: guides, usage: GUIDES_USAGE, what: 'the cutting guide of each sheet as an SVG file at true size' },
  yield: {
    run: yieldOf,
    usage: YIELD_USAGE,
    what: 'the most cards, what one more sheet gives, the sheets for 1, 2, … cards',
  },
  'near-misses': {
    run: nearMissesOf,
    usage: NEAR_MISSES_USAGE,
    what: 'small changes of size that save a sheet or add a card',
  },
  check: {
    run: check,
    usage: CHECK_USAGE,
    what: 'whether a card can be built, folded, slipped into its envelope and posted',
  },
  steps: { run: steps, usage: STEPS_USAGE, what: 'the cuts of a batch in the order in which a person makes them' },
  mix: { run: mix, usage: MIX_USAGE, what: 'which paper of a mix each card gets in each role' },
  handout: { run: handout, usage: HANDOUT_USAGE, what: 'the printable handout of a sketch, as a tagged PDF' },
  'cut-files': {
    run: cutFilesOf,
    usage: CUT_FILES_USAGE,
    what: 'true-size outlines for a cutting machine, as SVG or DXF',
  },
  cut: { run: cut, usage: CUT_USAGE, what: 'a cutting plan for a list of rectangles' },
};

function help(): string {
  const lines = Object.values(COMMANDS).map(({ usage, what }) => `  ${usage}\n      ${what}\n`);
  return `trimwell: from a card to its cutting guide\n\n${lines.join('')}\nExit code 0: everything made; 1: something cannot be made; 2: bad input.\n`;
}

const readFromDisk: ReadText = (file) => (file === '-' ? text(process.stdin) : readFile(file, 'utf8'));

const writeToDisk = async (file: string, content: string | Uint8Array): Promise<void> => {
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, content);
};

/** Runs one command line and says how it ended, without touching the process. */
export async function runCommand(
  args: readonly string[],
  readText: ReadText,
  writeText: WriteText,
  writeBytes: WriteBytes = writeToDisk,
): Promise<Outcome> {
  const [name, ...rest] = args;
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') return printed(help());
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!command)
    return misused(
      `There is no command ${JSON.stringify(name)}.`,
      Object.keys(COMMANDS)
        .map((known) => `trimwell ${known}`)
        .join(' | '),
    );
  if (rest.includes('--help') || rest.includes('-h')) return printed(`${command.usage}\n    ${command.what}\n`);
  try {
    return await command.run(rest, readText, writeText, writeBytes);
  } catch (error) {
    if (error instanceof UsageError) return misused(error.message, command.usage);
    if (error instanceof Error && 'code' in error && typeof error.code === 'string') {
      return { code: BAD_INPUT, out: '', error: `${error.message}\n` };
    }
    throw error;
  }
}

/** Runs one command line against the real files and streams; returns the exit code. */
export async function run(args: readonly string[]): Promise<number> {
  const { code, out, error } = await runCommand(args, readFromDisk, writeToDisk, writeToDisk);
  // Whoever reads may stop early (`| head`); then there is nobody left to tell.
  process.stdout.on('error', (reason: NodeJS.ErrnoException) => {
    if (reason.code !== 'EPIPE') throw reason;
  });
  process.stdout.write(out);
  process.stderr.write(error);
  return code;
}
