// The voice of this machine: espeak-ng, and what packs its sound, where they are installed.
import { spawn } from 'node:child_process';
import { accessSync, constants, rmSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { text } from 'node:stream/consumers';

/** Speaks texts of one language into files. */
export interface Voice {
  /** What the sound hangs on beside the text: voice, speed, packing. Another of these is another sound. */
  readonly manner: string;
  /** The end of its files' names. */
  readonly end: string;
  /** Speaks a text into a file. Rejects with what went wrong. */
  readonly speak: (text: string, file: string) => Promise<void>;
}

/** The voices of a machine by language; null where a language has none. */
export interface Speaker {
  readonly voiceOf: (lang: string) => Voice | null;
  /** What packs the sound; null where it stays as large as it is. */
  readonly packedBy: string | null;
}

// Slow and with a little air between the words (hundredths of a second): many who listen are five years old, in a barn.
const WORDS_PER_MIN = 135;
const GAP = 2;
/** Voices to try for a language, the best first; another language is spoken by the voice of its own code. */
const VOICES: Readonly<Record<string, readonly string[]>> = { en: ['en-us', 'en'], es: ['es-419', 'es'] };

interface Packer {
  readonly program: string;
  readonly end: string;
  readonly args: (wav: string, file: string) => readonly string[];
}
// The smallest sound first, at the quickest setting, since a cold build packs some 2,000: of Opus at this rate the part
// made for music takes 12 ms a sentence and the part made for speech 29, at one size and much the same nearness to what
// was spoken (6.7 and 6.1 dB apart, as a mean over the spectrum). One serial number: the same text gives the same file.
const PACKERS: readonly Packer[] = [
  { program: 'opusenc', end: 'opus', args: (wav, file) => ['--quiet', '--music', '--bitrate', '20', '--comp', '0', '--framesize', '60', '--padding', '0', '--serial', '1', wav, file] },
  { program: 'oggenc', end: 'ogg', args: (wav, file) => ['--quiet', '-q', '0', '-s', '1', '-o', file, wav] },
  { program: 'ffmpeg', end: 'opus', args: (wav, file) => ['-loglevel', 'error', '-y', '-i', wav, '-c:a', 'libopus', '-b:a', '20k', '-application', 'voip', '-frame_duration', '60', '-compression_level', '0', '-fflags', '+bitexact', '-f', 'ogg', file] },
  { program: 'lame', end: 'mp3', args: (wav, file) => ['--quiet', '-V', '6', wav, file] },
]; // prettier-ignore

/** Whether the PATH has the program that speaks; `PAILSIDE_SILENT` leaves it out where the sounds are of no use. */
export function hasVoice(env: NodeJS.ProcessEnv): boolean {
  return !env['PAILSIDE_SILENT'] && isOnPath('espeak-ng', env);
}

/** The speaker of this machine; null where espeak-ng is missing or does not run. */
export async function findSpeaker(env: NodeJS.ProcessEnv): Promise<Speaker | null> {
  if (!hasVoice(env)) return null;
  const listed = await run('espeak-ng', ['--voices'], '', env).catch(() => null);
  if (listed === null) return null;
  const known = new Set(listed.split('\n').map((line) => line.trim().split(/\s+/)[1] ?? ''));
  const packer = PACKERS.find(({ program }) => isOnPath(program, env)) ?? null;
  return {
    packedBy: packer?.program ?? null,
    voiceOf: (lang) => {
      const name = (VOICES[lang] ?? [lang]).find((one) => known.has(one));
      return name === undefined ? null : voiceOf(name, packer, env);
    },
  };
}

function voiceOf(name: string, packer: Packer | null, env: NodeJS.ProcessEnv): Voice {
  const speak = (words: string, wav: string) =>
    run('espeak-ng', ['-v', name, '-s', String(WORDS_PER_MIN), '-g', String(GAP), '-b', '1', '-w', wav, '--stdin'], words, env); // prettier-ignore
  return {
    manner: [name, WORDS_PER_MIN, GAP, ...(packer?.args('', '') ?? ['wav'])].join(' '),
    end: packer?.end ?? 'wav',
    speak: async (words, file) => {
      if (packer === null) return void (await speak(words, file));
      const wav = `${file}.wav`;
      try {
        await speak(words, wav);
        await run(packer.program, packer.args(wav, file), '', env);
      } finally {
        rmSync(wav, { force: true });
      }
    },
  };
}

function isOnPath(program: string, env: NodeJS.ProcessEnv): boolean {
  const folders = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.some((folder) => {
    try {
      accessSync(join(folder, program), constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}

/** Runs a program with a text on its input; what it says on its output. Rejects with its last words. */
async function run(
  program: string,
  args: readonly string[],
  given: string,
  env: NodeJS.ProcessEnv,
): Promise<string> {
  const child = spawn(program, args, { env, stdio: ['pipe', 'pipe', 'pipe'] });
  const ended = new Promise<number | null>((done, failed) => {
    child.on('error', failed);
    child.on('close', done);
  });
  // A program that ends before it has read everything breaks the pipe; its code says the rest.
  child.stdin.on('error', () => {});
  child.stdin.end(given);
  const said = Promise.all([text(child.stdout), text(child.stderr)]);
  const code = await ended;
  const [output, complaint] = await said;
  if (code !== 0)
    throw new Error(`${program}: ${complaint.trim().split('\n').at(-1) || `ended with ${code}`}`);
  return output;
}
