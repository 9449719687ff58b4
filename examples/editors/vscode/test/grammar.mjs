// Holds the TextMate grammar to what the words, numbers and names of the
// language are, on lines of the examples and on the examples as a whole.
import { readFileSync, readdirSync, existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const require = createRequire(import.meta.url);
const oniguruma = require("vscode-oniguruma");
const { Registry, parseRawGrammar, INITIAL } = require("vscode-textmate");

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const examples = process.argv[2] ?? join(root, "..", "..");
const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
let passed = 0;
const faults = [];
const check = (ok, what) => (ok ? passed++ : faults.push(what));

await oniguruma.loadWASM(readFileSync(join(dirname(require.resolve("vscode-oniguruma")), "onig.wasm")).buffer);
const registry = new Registry({
  onigLib: Promise.resolve({ createOnigScanner: (s) => new oniguruma.OnigScanner(s), createOnigString: (s) => new oniguruma.OnigString(s) }),
  loadGrammar: async (scope) => {
    const g = manifest.contributes.grammars.find((x) => x.scopeName === scope);
    return g ? parseRawGrammar(readFileSync(join(root, g.path), "utf8"), g.path) : null;
  },
});
const grammar = await registry.loadGrammar("source.plant");

// scopes gives the pieces of a text, each with its innermost scope.
function scopes(text) {
  const out = [];
  let state = INITIAL;
  for (const line of text.split("\n")) {
    const r = grammar.tokenizeLine(line, state);
    state = r.ruleStack;
    for (const t of r.tokens) out.push({ text: line.slice(t.startIndex, t.endIndex), scope: t.scopes.at(-1), line, at: t.startIndex });
  }
  return out;
}

const keyword = "keyword.control.plant";
const name = "entity.name.type.plant";
const number = "constant.numeric.plant";
const unit = "keyword.other.unit.plant";
const size = "constant.numeric.size.plant";
const date = "constant.numeric.date.plant";
const string = "string.quoted.double.plant";
const comment = "comment.line.number-sign.plant";
const operator = "keyword.operator.plant";
const open = "constant.language.plant";
const plain = "source.plant";
for (const [line, want] of [
  ["  altitude        85 m   # above the sea", [["altitude", keyword], ["85", number], ["m", unit], ["# above the sea", comment]]],
  ["  outside         -4 degC", [["-4", number], ["degC", unit]]],
  ["  primary         75/55 degC", [["75/55", number], ["degC", unit]]],
  ["  gas-inlet       17.5..25 mbar for natural", [["gas-inlet", keyword], ["17.5..25", number], ["mbar", unit], ["for", plain]]],
  ["  water-connection 1 1/4 in", [["1 1/4", number], ["in", unit]]],
  ["  flow            40.5 m3/h", [["40.5", number], ["m3/h", unit]]],
  ["  co2             9.2 %", [["9.2", number], ["%", unit]]],
  ["  pipe G1         steel DN65 14 m rise 1.2 m from Meter to Shut-1 bends 4 off", [["pipe", keyword], ["G1", name], ["steel", plain], ["DN65", size], ["14", number], ["from", plain], ["Meter", name], ["Shut-1", name], ["4", number], ["off", unit]]],
  ["units U1..U8 {", [["units", keyword], ["U1", name], ["..", operator], ["U8", name]]],
  ["room { side 0.8 m }", [["room", keyword], ["side", keyword], ["0.8", number], ["m", unit]]],
  ["commissioned U1 serial \"W100-26-04107\" 2026-06-15 by E1 with An-1 {", [["commissioned", keyword], ["\"W100-26-04107\"", string], ["2026-06-15", date], ["E1", name], ["An-1", name]]],
  ["building        sports-hall built 2004-05", [["sports-hall", plain], ["2004-05", date]]],
  ["require Flow-H.velocity <= 0.8 m/s because \"quiet # rooms\"", [["require", keyword], ["Flow-H", name], ["<=", operator], ["0.8", number], ["m/s", unit], ["\"quiet # rooms\"", string]]],
  ["  inhibitor       none", [["none", open]]],
  ["  mass            unknown", [["unknown", open]]],
  ["  bolt            M16 8 off", [["M16", size], ["8", number]]],
  ["  type            Wall-60", [["Wall-60", name]]],
  ["\"not closed", [["\"not closed", string]]],
]) {
  const got = scopes(line);
  let from = 0;
  for (const [text, scope] of want) {
    const i = got.findIndex((t, n) => n >= from && t.text === text);
    check(i >= 0 && got[i].scope === scope, `${line}: ${text} is ${i < 0 ? "no piece of its own" : got[i].scope}, not ${scope}`);
    if (i >= 0) from = i + 1;
  }
}

// In the examples every line that is not blank begins with a word, a comment or
// the end of a block, and no digit stands outside numbers, sizes, dates, names,
// words, strings and comments.
const files = readdirSync(examples).filter((f) => f.endsWith(".plant"));
check(files.length >= 5, `${files.length} examples`);
for (const f of files) {
  const seen = new Set();
  for (const t of scopes(readFileSync(join(examples, f), "utf8"))) {
    seen.add(t.scope);
    if (t.scope === plain && /(^|[^A-Za-z0-9-])\d/.test(t.text)) check(false, `${f}: a bare number in ${t.line}`);
    if (t.at === t.line.search(/\S/) && /^[a-z]/.test(t.text)) check(t.scope === keyword, `${f}: ${t.text} is ${t.scope} in ${t.line}`);
  }
  for (const scope of [keyword, name, number, unit, string, comment]) check(seen.has(scope), `${f} shows no ${scope}`);
}

// What the manifest names is there.
for (const path of [manifest.main, ...manifest.contributes.languages.map((l) => l.configuration), ...manifest.contributes.grammars.map((g) => g.path)]) {
  check(existsSync(join(root, path)), `${path} is missing`);
}

for (const f of faults.slice(0, 20)) console.error(f);
console.log(`${passed} passed, ${faults.length} failed`);
process.exit(faults.length > 0 ? 1 : 0);
