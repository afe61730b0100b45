// Measures the page in a real browser and prints the figures of docs/performance.md. Not a test: it asserts nothing.
// Build the Release program and the browser tests first, then run it with the Node that comes with the driver:
//   tests/NameBand.Browser/bin/Release/net10.0/.playwright/node/linux-x64/node tests/NameBand.Browser/measure.js [first|heights|slider|garment|scroll]

const fs = require('fs'), os = require('os'), path = require('path');
const { spawn } = require('child_process');
const root = path.resolve(__dirname, '../..');
const { chromium } = require(path.join(__dirname, 'bin/Release/net10.0/.playwright/package'));
const program = process.env.NAMEBAND_PROGRAM ?? path.join(root, 'src/NameBand.Cli/bin/Release/net10.0/nameband.dll');

const sorted = all => [...all].sort((a, b) => a - b);
const at = (all, part) => sorted(all)[Math.min(all.length - 1, Math.floor(all.length * part))];
const ms = value => `${value.toFixed(value < 20 ? 1 : 0)} ms`;

async function serve(job, work) {
  const begun = performance.now();
  const server = spawn('dotnet', [program, 'page', job, '--no-browser']);
  try {
    const url = await new Promise((found, lost) => {
      let said = '';
      server.stdout.on('data', d => { said += d; const m = /http:\/\/127\.0\.0\.1:\d+\/open\/[a-z0-9-]{23}(?=\s)/.exec(said); if (m) found(m[0]); });
      server.on('exit', () => lost(new Error(said)));
    });
    await work(url, begun, server.pid);
  } finally {
    server.kill();
  }
}

const outlines = '[data-part=table][data-outlines]';

async function firstPicture(browser, job, times) {
  const all = [], busy = [];
  // A maker's browser is open already and opens a tab, and not a whole window with its own bars and buttons.
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  await context.newPage();
  for (let i = 0; i < times; i++) {
    await serve(job, async (url, begun, pid) => {
      const page = await context.newPage();
      const tools = await context.newCDPSession(page);
      await tools.send('Performance.enable');
      await page.goto(url, { waitUntil: 'commit' });
      await page.waitForSelector(outlines, { timeout: 60000 });
      all.push(performance.now() - begun);
      // Where other work shares the cores, processor time says more than the clock: the server's, all threads, and the page's own.
      const { metrics } = await tools.send('Performance.getMetrics');
      busy.push([ownMs(pid), 1000 * metrics.find(m => m.name === 'TaskDuration').value]);
      await page.close();
    });
  }
  console.log(`first picture after the start, median of ${times}: ${ms(at(all, 0.5))} (worst ${ms(Math.max(...all))})`);
  console.log(`processor time until then, medians: server ${ms(at(busy.map(b => b[0]), 0.5))}, the tab's main thread ${ms(at(busy.map(b => b[1]), 0.5))}`);
}

/** Processor time of a process so far, where the system tells it as Linux does; a tick is a hundredth of a second. */
function ownMs(pid) {
  const fields = fs.readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' ');
  return 10 * (Number(fields[11]) + Number(fields[12]));
}

async function heights(browser, job, times) {
  await serve(job, async url => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(url);
    await page.waitForSelector(outlines, { timeout: 60000 });
    // The picture stands before the page is alive; until then a press says nothing.
    await page.waitForSelector('[data-alive]', { state: 'attached', timeout: 60000 });
    await page.getByRole('button', { name: /^[\d.]+ mm$/ }).first().click();
    await sliding(page, times);
    const field = page.getByLabel('Height', { exact: true });
    const toOutlines = [], toThread = [];
    for (let i = 0; i < times + 3; i++) {
      await page.waitForTimeout(1500);
      await field.fill(`${(7 + (i % 16) * 0.1).toFixed(1)} mm`);
      // From the change of the field to the frame in which what is seen of the new layout was drawn.
      const taken = await field.evaluate(input => new Promise(done => {
        const table = document.querySelector('[data-part=table]');
        const before = table.dataset.outlines;
        const begun = performance.now();
        let first = 0;
        const look = new MutationObserver(() => {
          if (!first && table.dataset.outlines !== before) first = performance.now() - begun;
          if (first && table.dataset.thread === table.dataset.outlines) { look.disconnect(); done([first, performance.now() - begun]); }
        });
        look.observe(table, { attributes: true });
        input.dispatchEvent(new Event('change', { bubbles: true }));
      }));
      if (i >= 3) { toOutlines.push(taken[0]); toThread.push(taken[1]); }
    }
    console.log(`new height to outlines of what is seen, ${times} times: median ${ms(at(toOutlines, 0.5))}, nine in ten ${ms(at(toOutlines, 0.9))}`);
    console.log(`new height to drawn thread, ${times} times: median ${ms(at(toThread, 0.5))}, nine in ten ${ms(at(toThread, 0.9))}`);
    await page.close();
  });
}

/** From a move of the slider to the frame in which the outlines in sight are drawn at that height. */
async function sliding(page, times) {
  await page.waitForSelector('#height-slide');
  const taken = await page.evaluate(async times => {
    const slide = document.getElementById('height-slide'), table = document.querySelector('[data-part=table]'), all = [];
    for (let i = 0; i < times; i++) {
      slide.value = 7 + (i % 16) * 0.1;
      const begun = performance.now(), wanted = slide.value;
      slide.dispatchEvent(new Event('input', { bubbles: true }));
      while (table.dataset.preview !== wanted) await new Promise(requestAnimationFrame);
      all.push(performance.now() - begun);
    }
    return all;
  }, times);
  console.log(`slider to drawn outlines, ${times} times: median ${ms(at(taken, 0.5))}, nine in ten ${ms(at(taken, 0.9))}`);
  await page.waitForTimeout(3000);
}

/** The slider alone, on a table that shows as many names as it can show as letters. */
async function slider(browser, job, times) {
  await serve(job, async url => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(url);
    await page.waitForSelector(outlines, { timeout: 120000 });
    await page.waitForSelector('[data-alive]', { state: 'attached', timeout: 60000 });
    await page.getByRole('button', { name: /^[\d.]+ mm$/ }).first().click();
    const seen = await page.evaluate(async () => {
      const { view } = (await import('/_content/NameBand.Web/strip.js')).here.strip;
      view.camera.scale = 5.2 / view.data.map.height;
      view.camera.clamp();
      view.changed();
      await new Promise(done => setTimeout(done, 3000));
      return view.seen.length;
    });
    console.log(`${seen} names in sight as letters:`);
    await sliding(page, times);
    await page.close();
  });
}

/** The garment, turned by a hand that does not rest: one turn a frame, as in the picture beside the list and over the whole window. */
async function garment(browser, job, what) {
  await serve(job, async url => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(url);
    await page.waitForSelector(outlines, { timeout: 120000 });
    await page.waitForSelector('[data-alive]', { state: 'attached', timeout: 60000 });
    await page.locator('.hangs').scrollIntoViewIfNeeded();
    await page.waitForSelector('.hangs[data-drawn]', { timeout: 120000 });
    await page.waitForFunction(() => document.querySelector('.garment').garment.look.letters.todo.length === 0, null, { timeout: 120000 });
    for (const isLarge of [false, true]) {
      if (isLarge) await page.getByRole('button', { name: 'larger', exact: true }).click();
      await page.waitForTimeout(1500);
      const got = await page.evaluate(async () => {
        const { look } = document.querySelector('.garment').garment, between = [];
        let last = 0;
        await new Promise(done => {
          const tick = time => {
            if (last) between.push(time - last);
            last = time;
            if (between.length >= 300) { done(); return; }
            look.turn(0.02, 0);
            look.draw();
            requestAnimationFrame(tick);
          };
          requestAnimationFrame(tick);
        });
        const gl = look.renderer.getContext(), more = gl.getExtension('WEBGL_debug_renderer_info');
        return { between, size: look.size, coarse: look.coarse, by: gl.getParameter(more ? more.UNMASKED_RENDERER_WEBGL : gl.RENDERER), triangles: look.renderer.info.render.triangles };
      });
      const mean = 1000 * got.between.length / got.between.reduce((a, b) => a + b, 0);
      console.log(`garment, ${what}, ${Math.round(got.size.width)} x ${Math.round(got.size.height)}, ${got.triangles} triangles, drawn at ${got.coarse.toFixed(2)}: median frame ${ms(at(got.between, 0.5))}, 95 of 100 within ${ms(at(got.between, 0.95))}, ${mean.toFixed(0)} frames a second (${got.by})`);
    }
    await page.close();
  });
}

async function scrolling(browser, job) {
  await serve(job, async url => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(url);
    await page.waitForSelector(outlines, { timeout: 120000 });
    await page.waitForFunction(() => document.querySelectorAll('.strip').length > 0 && import('/_content/NameBand.Web/strip.js').then(m => m.here.strip.data.minutes !== null), null, { timeout: 600000, polling: 2000 });
    for (const [what, scale, step] of [['the whole hem, bars', 0, 1], ['letters as outlines', 1.5, 12], ['drawn thread', 3.8, 12]]) {
      const got = await page.evaluate(async ([scale, step]) => {
        const { view } = (await import('/_content/NameBand.Web/strip.js')).here.strip;
        view.camera.scale = scale;
        view.camera.left = 5000;
        view.camera.clamp();
        view.changed();
        await new Promise(r => setTimeout(r, 3000));
        const between = [];
        let last = 0, work = 0;
        const frames = 600;
        await new Promise(done => {
          const tick = time => {
            if (last) between.push(time - last);
            last = time;
            if (between.length >= frames) { done(); return; }
            if (scale > 0) view.camera.left += step / view.camera.scale;
            view.camera.clamp();
            view.changed();
            requestAnimationFrame(tick);
          };
          requestAnimationFrame(tick);
        });
        return { between, seen: view.seen.length };
      }, [scale, step]);
      const late = got.between.filter(t => t > 17.5).length;
      console.log(`${what}, ${got.seen} names in sight: median frame ${ms(at(got.between, 0.5))}, 95 of 100 within ${ms(at(got.between, 0.95))}, ${late} of ${got.between.length} late`);
    }
    await page.close();
  });
}

function lanternWalk() {
  const job = fs.mkdtempSync(path.join(os.tmpdir(), 'measure-'));
  fs.cpSync(path.join(root, 'samples/lantern-walk'), job, { recursive: true });
  return job;
}

/** Made-up names, as many as are wanted, on rounds of a straight edge. */
function many(count, hem, rounds, closed = false) {
  const job = fs.mkdtempSync(path.join(os.tmpdir(), 'measure-'));
  const first = ['Ottilie', 'Bram', 'Ngozi', 'Zdeněk', 'Wenna', 'Jory', 'Anaïs', 'Ewa', 'Dunstan', 'Linda'];
  const middle = ['Ash', 'Birch', 'Cedar', 'Elder', 'Fern', 'Hazel', 'Ivy', 'Juniper', 'Linden', 'Maple', 'Oak', 'Rowan', 'Sedge', 'Thorn', 'Willow'];
  const last = ['Marsh', 'Farrow', 'Weir', 'Holub', 'Tarn', 'Mill', 'Brook', 'Quay', 'Ferry', 'Lock', 'Reed', 'Heron', 'Otter', 'Wharf', 'Delta', 'Ford', 'Creek', 'Pool', 'Shoal', 'Weirside'];
  const all = first.flatMap(f => middle.flatMap(m => last.map(l => `${f} ${m} ${l}`)));
  const rows = Array.from({ length: count }, (_, i) => i < all.length ? all[i] : `${all[i % all.length]} ${middle[Math.floor(i / all.length) % middle.length]}by`);
  fs.writeFileSync(path.join(job, 'names.csv'), `Name\n${rows.join('\n')}\n`);
  fs.writeFileSync(path.join(job, 'job.json'), JSON.stringify({
    format: 1, title: `${count} names`, lists: ['names.csv'], hem: { length: hem, circlePart: closed ? 1 : 0, closed }, strip: { rounds },
    lettering: { face: 'Nunito Bold', height: '8 mm' }, fabric: 'quilting cotton',
  }));
  return job;
}

(async () => {
  console.log(`${os.cpus().length} cores of ${os.cpus()[0].model}; load ${os.loadavg()[0].toFixed(1)} when begun`);
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  const small = lanternWalk(), thousand = many(1000, '40 m', 4, true), large = many(3000, '420 m', 1), largest = many(10000, '800 m', 2);
  const which = process.argv[2] ?? 'all';
  try {
    if (['all', 'first'].includes(which)) await firstPicture(browser, small, 5);
    if (['all', 'heights'].includes(which)) await heights(browser, small, 21);
    if (['all', 'slider'].includes(which)) for (const job of [small, thousand]) await slider(browser, job, 21);
    if (['all', 'garment'].includes(which)) {
      await garment(browser, small, '60 names');
      await garment(browser, thousand, '1,000 names');
    }
    if (['all', 'scroll'].includes(which)) for (const job of [large, largest]) await scrolling(browser, job);
  } finally {
    await browser.close();
    for (const job of [small, thousand, large, largest]) fs.rmSync(job, { recursive: true });
    console.log(`load ${os.loadavg()[0].toFixed(1)} at the end`);
  }
})();
