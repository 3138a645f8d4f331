// Core compiled for the browser, beside the page so that typing never waits for it: one JSON text in, one out.
import { dotnet } from '/core/dotnet.js';

const exports = (async () => {
  const { getAssemblyExports, getConfig } = await dotnet.create();
  return (await getAssemblyExports(getConfig().mainAssemblyName)).Lanewright.Browser.Program;
})();

exports.then(
  program => postMessage({ ready: true, version: program.Version() }),
  wrong => postMessage({ failed: String(wrong?.message ?? wrong) }));

// The first answers take many times as long as later ones: the interpreter compiles what it has gone through often enough. When
// a person is about to weigh, these are given to an invented test that nobody sees. Real questions count as well, and while they
// come nothing competes with them.
const REST = 1500;
let left = 32;
let asked = -Infinity;
let warming = false;

async function warm() {
  if (warming) return;
  warming = true;
  const program = await exports;
  while (left > 0) {
    const rested = performance.now() - asked;
    if (rested < REST) {
      await new Promise(done => { setTimeout(done, REST - rested); });
      continue;
    }
    program.Live(JSON.stringify({ culture: 'en-US', units: 'us', kind: 'drop-test', fields: invented(left--) }));
    await new Promise(done => { setTimeout(done, 20); });
  }
  postMessage({ warm: true });
}

function invented(times) {
  const fields = {
    'spreader.id': 'none', 'spreader.loop': 'closed', 'spreader.constant': 'pulses-per-mass', 'spreader.unit': 'pulse/lb',
    'spreader.resolution': '0.1', 'spreader.current': '11.4', 'material.name': 'none', 'scale.id': 'none', 'scale.division': '0.1',
    'scale.capacity': '150', 'scale.class': 'iii', commonError: 'yes',
  };
  for (let run = 0; run < 10; run++) {
    Object.assign(fields, { [`runs[${run}].pulses`]: String(4000 + 10 * run), [`runs[${run}].filled`]: '5' });
    for (let container = 0; container < 5; container++) {
      fields[`runs[${run}].containers[${container}].tare`] = '2.5';
      fields[`runs[${run}].containers[${container}].gross`] = `42.${(times + 3 * run + container) % 10}`;
    }
  }
  return fields;
}

onmessage = async ({ data: { id, call, json } }) => {
  if (call === 'warm') {
    warm().catch(() => {});
    return;
  }
  if (call === 'Live') {
    asked = performance.now();
    left--;
  }
  try {
    const program = await exports;
    postMessage({ id, answer: program[call](json) });
  } catch (wrong) {
    postMessage({ id, wrong: String(wrong?.message ?? wrong) });
  }
};
