// Writes psychrolib.toml: moist air on a grid, by the npm package psychrolib.
//
//   npm install psychrolib@1.1.1     (in any folder)
//   NODE_PATH=node_modules node psychrolib.js > psychrolib.toml
'use strict';
const air = require('psychrolib');
const { version } = require('psychrolib/package.json');

air.SetUnitSystem(air.SI);
const row = (...numbers) => '  [' + numbers.map((x) => (Number.isInteger(x) ? x.toFixed(1) : String(x))).join(', ') + '],';
const table = (name, columns, rows) => {
  console.log(`\n[${name}]\ncolumns = ${JSON.stringify(columns)}\nrows = [`);
  rows.forEach((r) => console.log(row(...r)));
  console.log(']');
};

console.log(`# Moist air by the npm package psychrolib ${version}, SI. Written by psychrolib.js; do not edit.`);
console.log('# C, Pa, kg/kg, J/kg, m3/kg, kg/m3, m. It finds dew points and wet bulbs within 0.001 K.');
console.log('# It prints the equations of ASHRAE Fundamentals 2017, chapter 1, so it checks the');
console.log('# arithmetic and the constants; other files here check the equations.');

const pressures = [101325, 92000, 82000];
const states = [];
for (const t of [-40, -30, -20, -10, -5, 0, 5, 10, 20, 25, 35, 50]) {
  for (const rh of [0.1, 0.3, 0.5, 0.8, 1]) {
    for (const p of pressures) {
      const w = air.GetHumRatioFromRelHum(t, rh, p);
      states.push([t, rh, p, w, air.GetMoistAirEnthalpy(t, w), air.GetMoistAirVolume(t, w, p), air.GetMoistAirDensity(t, w, p),
        air.GetTDewPointFromRelHum(t, rh), air.GetTWetBulbFromHumRatio(t, w, p)]);
    }
  }
}
table('state', ['dry_bulb', 'relative_humidity', 'pressure', 'humidity_ratio', 'enthalpy', 'volume', 'density', 'dew_point', 'wet_bulb'], states);

const wet = [];
for (const [t, depressions] of [[-25, [0, 0.3]], [-8, [0.5, 2]], [-1, [1, 3]], [3, [0, 3, 5]], [12, [1, 6]], [24, [0.5, 7, 14]], [38, [3, 12, 20]]]) {
  for (const depression of depressions) {
    for (const p of pressures) wet.push([t, t - depression, p, air.GetHumRatioFromTWetBulb(t, t - depression, p)]); // none is its floor of 1e-7
  }
}
table('wet_bulb', ['dry_bulb', 'wet_bulb', 'pressure', 'humidity_ratio'], wet);

const saturation = [];
for (let t = -100; t <= 200; t += 10) saturation.push([t, air.GetSatVapPres(t)]);
table('saturation', ['temperature', 'pressure'], saturation);

const places = [];
for (let z = -500; z <= 9000; z += 500) places.push([z, air.GetStandardAtmPressure(z), air.GetStandardAtmTemperature(z)]);
table('atmosphere', ['elevation', 'pressure', 'temperature'], places);
