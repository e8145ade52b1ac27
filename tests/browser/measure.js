// Measures the served page in Chromium, prints the figures and whether each keeps its budget:
// `cargo xtask measure`. Ends in failure when one does not.

import { chromium } from '@playwright/test';

const address = process.env.BASE_URL;

// Of the script of a frame, in milliseconds; chosen: a quarter and a half of what a frame at 60 a
// second has, which leaves layout and paint the rest.
const MEDIAN = 4;
const LATE = 8;
// What may come on top of the record in ten minutes, in bytes; chosen: lists grow by doubling, so
// up to three times the record is taken; half a megabyte for the chart's thinned samples, which
// reach their bound in the fourth minute, and for whole pages of WebAssembly's memory.
const RECORD_TIMES = 3;
const SLACK = 512 * 1024;
// Nodes of the document that may be more after ten minutes than after one; chosen, far below one a
// second.
const NODES = 50;

let over = 0;
function budget(what, passes) {
  if (!passes) over += 1;
  console.log(`${what}: ${passes ? 'within budget' : 'OVER BUDGET'}`);
}

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH,
  chromiumSandbox: false,
});

async function open(beforehand) {
  const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } });
  await page.addInitScript(beforehand);
  await page.goto(address);
  await page.waitForFunction(() => document.documentElement.dataset.ready === 'true');
  // The page's own functions for measuring.
  await page.evaluate(async () => {
    const script = [...document.querySelectorAll('link[rel=modulepreload], script')]
      .map((element) => element.href || element.src)
      .find((url) => /\/web-[^/]*\.js$/.test(url));
    window.measuring = await import(script);
  });
  return page;
}

async function press(page, key, times = 1) {
  for (let i = 0; i < times; i += 1) await page.keyboard.press(key);
}

// Each frame takes the time from the start of the page's own callback to the next callback of
// the same frame: its script with all that it set off, without layout and paint.
const watchFrames = () => {
  const ask = window.requestAnimationFrame.bind(window);
  let started = 0;
  window.frameTimes = [];
  window.frameStarts = [];
  window.requestAnimationFrame = (callback) =>
    ask((now) => {
      started = performance.now();
      window.frameStarts.push(started);
      callback(now);
      // Asked for after the page's own next callback, so it comes after it.
      ask(ended);
    });
  const ended = () => {
    if (started > 0) window.frameTimes.push(performance.now() - started);
    started = 0;
  };
};

const page = await open(watchFrames);
const speed = await page.evaluate(() => {
  const { fly_for } = window.measuring;
  fly_for(60);
  const seconds = 1200;
  const start = performance.now();
  fly_for(seconds);
  return seconds / ((performance.now() - start) / 1000);
});
console.log(`simulation in the browser: ${speed.toFixed(0)} seconds of flight a second`);

for (const [what, keys] of [
  ['card and rose', ''],
  ['with the reasons', 'w'],
  ['with reasons, timeline and situation', 'gs'],
]) {
  for (const key of keys) await press(page, key);
  await press(page, 'ArrowRight', 3);
  await page.waitForTimeout(2000);
  await page.evaluate(() => {
    window.frameTimes.length = 0;
    window.frameStarts.length = 0;
  });
  await page.waitForTimeout(10_000);
  const { times, starts } = await page.evaluate(() => ({
    times: window.frameTimes,
    starts: window.frameStarts,
  }));
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share) => sorted[Math.floor(share * (sorted.length - 1))];
  const rate = (starts.length - 1) / ((starts.at(-1) - starts[0]) / 1000);
  budget(
    `${what}, 1920×1080, in a turn: script of a frame ${at(0.5).toFixed(2)} ms median ` +
      `(at most ${MEDIAN}), ${at(0.95).toFixed(2)} ms 95th percentile (at most ${LATE}); ` +
      `${rate.toFixed(1)} frames a second`,
    at(0.5) < MEDIAN && at(0.95) < LATE,
  );
}
await page.close();

// Frames that come when they are asked for, a sixtieth of a second apart on the page's clock.
const driveFrames = () => {
  let waiting = [];
  let now = 1000;
  window.requestAnimationFrame = (callback) => waiting.push(callback);
  window.cancelAnimationFrame = () => {};
  window.drive = async (frames) => {
    for (let frame = 0; frame < frames; frame += 1) {
      now += 1000 / 60;
      const due = waiting;
      waiting = [];
      for (const callback of due) callback(now);
      await new Promise((resolve) => setTimeout(resolve));
    }
  };
};

// Ten minutes of flight at eight times real time, with everything shown.
const long = await open(driveFrames);
const devtools = await long.context().newCDPSession(long);
for (const key of 'wgs+++') await press(long, key);
await press(long, 'ArrowRight', 3);
const fly = (minutes) => long.evaluate((frames) => window.drive(frames), (minutes * 60 * 60) / 8);
async function held() {
  await devtools.send('HeapProfiler.collectGarbage');
  const { usedSize } = await devtools.send('Runtime.getHeapUsage');
  const { nodes } = await devtools.send('Memory.getDOMCounters');
  const [memory, time] = await long.evaluate(() => [
    window.measuring.memory_bytes(),
    Number(document.getElementById('readings').dataset.time),
  ]);
  return { memory, script: usedSize, nodes, time };
}
await fly(1);
const early = await held();
await fly(9);
const late = await held();
const minutes = (late.time - early.time) / 60;
const record = minutes * (await long.evaluate(() => window.measuring.record_bytes_a_minute()));
const kilobytes = (bytes) => `${(bytes / 1024).toFixed(0)} KiB`;
console.log(
  `a flight of ${(late.time / 60).toFixed(1)} minutes, everything shown: its record grows by ` +
    `${kilobytes(record / minutes)} a minute, from minute 1 on by ${kilobytes(record)}`,
);
for (const [what, of, allowed] of [
  ['WebAssembly memory', 'memory', RECORD_TIMES * record + SLACK],
  ['script heap', 'script', SLACK],
]) {
  const grown = late[of] - early[of];
  budget(
    `${what}: ${kilobytes(early[of])} after minute 1, ${kilobytes(late[of])} at the end; ` +
      `grown by ${kilobytes(grown)} (at most ${kilobytes(allowed)})`,
    grown <= allowed,
  );
}
budget(
  `document: ${early.nodes} nodes after minute 1, ${late.nodes} at the end (at most ${NODES} more)`,
  late.nodes - early.nodes <= NODES && minutes > 8.9,
);
await browser.close();
process.exitCode = over > 0 ? 1 : 0;
