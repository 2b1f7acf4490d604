// Checks files by their schemas: node formats.mjs FOLDER, in the root of the
// repository; the folder holds reports in JSON, the repository the rest.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import Ajv from "ajv/dist/2020.js";
import { parse } from "smol-toml";

const [reports] = process.argv.slice(2);
const ajv = new Ajv({ strict: true, strictRequired: false, allErrors: true });
const wrong = [];

check("reportfmt/schema/report.schema.json", listed(reports, ".json"), JSON.parse);
check("rules/schema/design.schema.json", ["concept", "faults", "incomplete", "ok"].flatMap((f) => listed(join("testdata/designs", f), ".vent.toml")), parse);
check("rules/schema/pack.schema.json", [...listed("rules/packs", ".rules.toml"), ...listed("testdata/packs", ".rules.toml")], parse);
check("rules/schema/config.schema.json", listed("testdata/configs", ".toml"), parse);
for (const line of wrong) console.error(line);
process.exitCode = wrong.length > 0 ? 1 : 0;

function listed(folder, ending) {
  return readdirSync(folder).filter((name) => name.endsWith(ending)).sort().map((name) => join(folder, name));
}

// A schema that takes anything proves nothing: it must refuse each file with a key
// that it does not know, and with each of the file's own keys set to a number that
// cannot stand there.
function check(schema, files, read) {
  const valid = ajv.compile(JSON.parse(readFileSync(schema, "utf8")));
  if (files.length === 0) wrong.push(`${schema}: no file to check by it`);
  let refused = 0;
  for (const file of files) {
    const text = readFileSync(file, "utf8");
    if (!valid(read(text))) wrong.push(...valid.errors.map((e) => `${file}: ${e.instancePath} ${e.message}`));
    for (const key of ["unheard_of", ...Object.keys(read(text))]) {
      if (valid({ ...read(text), [key]: -1 })) wrong.push(`${schema}: takes ${file} with ${key} = -1`);
      refused++;
    }
  }
  console.log(`${schema}: takes ${files.length} files, refuses ${refused} mistakes`);
}
