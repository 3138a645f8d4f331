// Core compiled for the browser, beside the page so that typing never waits for it: one JSON text in, one out.
import { dotnet } from '/core/dotnet.js';

const exports = (async () => {
  const { getAssemblyExports, getConfig } = await dotnet.create();
  return (await getAssemblyExports(getConfig().mainAssemblyName)).Lanewright.Browser.Program;
})();

exports.then(
  program => postMessage({ ready: true, version: program.Version() }),
  wrong => postMessage({ failed: String(wrong?.message ?? wrong) }));

onmessage = async ({ data: { id, call, json } }) => {
  try {
    const program = await exports;
    postMessage({ id, answer: program[call](json) });
  } catch (wrong) {
    postMessage({ id, wrong: String(wrong?.message ?? wrong) });
  }
};
