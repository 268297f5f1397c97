// What is held to hold, counted; the first line of each failure is enough to find it.
let passed = 0;
const failures = [];

export function check(what, holds, told = "") {
  if (process.env.CHECKS_TOLD) console.log(`${new Date().toISOString().slice(11, 23)} ${holds ? "holds" : "fails"}: ${what}`);
  if (holds) { passed += 1; return; }
  failures.push(what);
  console.log(`FAILED: ${what}${told ? `\n    ${String(told).slice(0, 1500)}` : ""}`);
}

export function outcome() {
  console.log(`${passed} checks hold, ${failures.length} do not.`);
  return failures.length === 0;
}
