// Opens a reading room of the sample shelf for a test, and closes it again.
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const program = process.env.GALLIPOT_PROGRAM;
const source = process.env.GALLIPOT_SOURCE;
if (!program || !source) throw new Error("GALLIPOT_PROGRAM and GALLIPOT_SOURCE must name the program and the project");

export const catalogue = join(source, "corpus-sample", "books.json");
export const home = mkdtempSync(join(tmpdir(), "gallipot-browser-"));
export const index = join(home, "shelf");

/** Runs the program to its end. */
export function gallipot(...words) {
  const ran = spawnSync(program, words, { encoding: "utf8", timeout: 60_000 });
  if (ran.status !== 0) throw new Error(`gallipot ${words.join(" ")}: ${ran.stderr}`);
  return ran.stdout;
}

/** The room's address, and how to close it. */
export async function openRoom(...more) {
  const room = spawn(program, ["serve", "--index", index, "--catalogue", catalogue, "--port", "0", ...more], { stdio: ["ignore", "pipe", "inherit"] });
  const address = await new Promise((resolve, reject) => {
    let said = "";
    const late = setTimeout(() => reject(new Error(`the room did not open: ${said}`)), 30_000);
    room.stdout.on("data", (piece) => {
      said += piece;
      const at = /http:\/\/\S+/.exec(said);
      if (at) { clearTimeout(late); resolve(at[0].replace(/\/$/, "")); }
    });
    room.on("exit", () => reject(new Error(`the room closed: ${said}`)));
  });
  const close = () => new Promise((resolve) => { room.removeAllListeners("exit"); room.on("exit", resolve); room.kill("SIGTERM"); });
  return { address, close };
}

export function clearUp() { rmSync(home, { recursive: true, force: true }); }
