// The page under load: many tabs, many requests, slow and cut connections, wrong hosts and origins, huge uploads; all on
// this computer and all bounded. Prints what was answered and refused and what the server's memory did. Not a test.
// Build the Release program and the browser tests first, then run it with the Node that comes with the driver:
//   tests/NameBand.Browser/bin/Debug/net10.0/.playwright/node/linux-x64/node tests/NameBand.Browser/load.js

const fs = require('fs'), http = require('http'), net = require('net'), os = require('os'), path = require('path');
const { spawn } = require('child_process');
const root = path.resolve(__dirname, '../..');
const { chromium } = require(path.join(__dirname, 'bin/Debug/net10.0/.playwright/package'));
const program = process.env.NAMEBAND_PROGRAM ?? path.join(root, 'src/NameBand.Cli/bin/Release/net10.0/nameband.dll');

const tabs = 50, requests = 10000, atOnce = 100, slow = 100, cut = 500, strange = 1000, uploads = 20, uploadMb = 100;
const pause = ms => new Promise(done => setTimeout(done, ms));

const job = fs.mkdtempSync(path.join(os.tmpdir(), 'load-'));
fs.cpSync(path.join(root, 'samples/lantern-walk'), job, { recursive: true });
const server = spawn('dotnet', [program, 'page', job, '--no-browser']);
const megabytes = () => Math.round(Number(/VmRSS:\s+(\d+)/.exec(fs.readFileSync(`/proc/${server.pid}/status`, 'utf8'))[1]) / 1024);
let peak = 0;
const watch = setInterval(() => { peak = Math.max(peak, megabytes()); }, 50);

const own = {};   // what the page's own browser sends
const agent = new http.Agent({ keepAlive: true, maxSockets: atOnce });

function ask(port, { method = 'GET', at = '/', headers = {}, body } = {}) {
  return new Promise(done => {
    const begun = performance.now();
    const request = http.request({ host: '127.0.0.1', port, method, path: at, headers: { ...own, ...headers }, agent, timeout: 30000 }, answer => {
      let bytes = 0;
      answer.on('data', d => { bytes += d.length; });
      answer.on('end', () => done({ status: answer.statusCode, bytes, ms: performance.now() - begun }));
      answer.on('error', () => done({ status: 'cut', bytes, ms: performance.now() - begun }));
    });
    request.on('timeout', () => request.destroy());
    request.on('error', () => done({ status: 'cut', bytes: 0, ms: performance.now() - begun }));
    if (body) body(request); else request.end();
  });
}

async function many(count, width, work) {
  const all = [];
  let next = 0;
  await Promise.all(Array.from({ length: width }, async () => { while (next < count) all.push(await work(next++)); }));
  return all;
}

const counted = all => Object.entries(all.reduce((by, a) => ({ ...by, [a.status]: (by[a.status] ?? 0) + 1 }), {})).map(([s, n]) => `${s}: ${n}`).join(', ');
const median = all => { const ms = all.map(a => a.ms).sort((a, b) => a - b); return `median ${ms[ms.length >> 1].toFixed(0)} ms, worst ${ms.at(-1).toFixed(0)} ms`; };

async function step(what, work) {
  peak = megabytes();
  const before = peak;
  const said = await work();
  console.log(`${what}: ${said}; memory ${before} MB before, ${Math.max(peak, megabytes())} MB at most`);
}

(async () => {
  const [address, port] = await new Promise((found, lost) => {
    let said = '';
    server.stdout.on('data', d => { said += d; const m = /http:\/\/127\.0\.0\.1:(\d+)\/open\/[a-z0-9-]{23}(?=\s)/.exec(said); if (m) found([m[0], Number(m[1])]); });
    server.on('exit', () => lost(new Error(said)));
  });
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  try {
    const context = await browser.newContext({ viewport: { width: 1024, height: 700 } });
    const one = await context.newPage();
    await one.goto(address);
    await one.waitForURL(`http://127.0.0.1:${port}/`);
    own.Cookie = (await context.cookies()).map(c => `${c.name}=${c.value}`).join('; ');
    await one.waitForSelector('[data-alive]', { timeout: 60000 });
    await one.waitForFunction(() => !document.querySelector('.sentence').textContent.includes('counting'), null, { timeout: 120000 });
    await pause(3000);
    const atRest = megabytes();
    console.log(`one tab, all counted: ${atRest} MB`);

    const manyTabs = async height => {
      const pages = [];
      for (let i = 0; i < tabs; i++) {
        const page = await context.newPage();
        await page.goto(`http://127.0.0.1:${port}/`, { timeout: 60000 });
        pages.push(page);
      }
      let alive = 0;
      for (const page of pages) if (await page.waitForSelector('[data-alive]', { timeout: 60000 }).then(() => true, () => false)) alive++;
      if (await one.locator('#panel').count() === 0) await one.getByRole('button', { name: /^[\d.]+ mm$/ }).first().click();
      const field = one.getByLabel('Height', { exact: true });
      await field.fill(`${height} mm`);
      await field.press('Enter');
      let followed = 0;
      for (const page of pages) {
        if (await page.waitForFunction(h => document.querySelector('.sentence').textContent.includes(h), `${height} mm high`, { timeout: 60000 }).then(() => true, () => false)) followed++;
      }
      for (const page of pages) await page.close();
      return `${alive} live, ${followed} follow a change made in another`;
    };
    await step(`${tabs} tabs`, () => manyTabs(8));

    const layout = (await (await fetch(`http://127.0.0.1:${port}/strip/version`, { headers: own })).json()).layout;
    const kinds = ['/', `/strip/${layout}/map`, `/strip/${layout}/shapes?names=0,1,2,3`, `/strip/${layout}/thread/5`, `/strip/${layout}/load/5`, '/machine/state', '/_content/NameBand.Web/page.css', `/hooping/${layout}/3/path`];
    await step(`${requests} requests, ${atOnce} at once`, async () => {
      const begun = performance.now();
      const all = await many(requests, atOnce, i => ask(port, { at: kinds[i % kinds.length] }));
      return `${counted(all)} in ${((performance.now() - begun) / 1000).toFixed(0)} s, ${median(all)}`;
    });

    await step(`${slow} connections that say a letter every half second`, async () => {
      const all = Array.from({ length: slow }, () => {
        const socket = net.connect(port, '127.0.0.1');
        const text = 'GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Slow: ' + 'a'.repeat(400);
        let at = 0;
        socket.on('error', () => {});
        socket.on('close', () => { socket.isGone = true; });
        socket.timer = setInterval(() => socket.isGone ? clearInterval(socket.timer) : socket.write(text[at++]), 500);
        return socket;
      });
      await pause(5000);
      const meanwhile = await many(50, 5, () => ask(port));
      await pause(35000);
      const ended = all.filter(s => s.isGone).length;
      all.forEach(s => { clearInterval(s.timer); s.destroy(); });
      return `meanwhile ${counted(meanwhile)}, ${median(meanwhile)}; ${ended} were ended by the server`;
    });

    await step(`${cut} connections cut in the middle of an answer`, async () => {
      await many(cut, 50, () => new Promise(done => {
        const socket = net.connect(port, '127.0.0.1', () => socket.write(`GET /strip/${layout}/map HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${own.Cookie}\r\n\r\n`));
        socket.once('data', () => { socket.destroy(); done({}); });
        socket.on('error', () => done({}));
      }));
      const after = await many(50, 5, () => ask(port));
      return `afterwards ${counted(after)}, ${median(after)}`;
    });

    await step(`${strange} requests of strangers`, async () => {
      const strangers = [{ Host: 'rebound.example' }, { Origin: 'http://elsewhere.example' }, { 'Sec-Fetch-Site': 'cross-site' }, { Host: `127.0.0.1.rebound.example:${port}` }, { Origin: 'null' }];
      return counted(await many(strange, 50, i => ask(port, { at: kinds[i % kinds.length], headers: strangers[i % strangers.length] })));
    });

    await step(`${uploads} uploads of ${uploadMb} MB`, async () => {
      const block = Buffer.alloc(1 << 20, 'a');
      const all = await many(uploads, 4, i => ask(port, {
        method: 'POST', at: ['/', '/machine/said', '/strip/drawn', '/_blazor/negotiate'][i % 4],
        headers: { 'Content-Type': ['multipart/form-data; boundary=x', 'application/json'][i % 2], ...(i % 3 ? { 'Content-Length': String(uploadMb << 20) } : {}) },
        body: request => {
          let sent = 0;
          const more = () => { while (sent++ < uploadMb) if (!request.write(block)) { request.once('drain', more); return; } request.end(); };
          more();
        },
      }));
      return counted(all);
    });

    await step(`${tabs} tabs once more`, () => manyTabs(7));
    await one.getByRole('button', { name: /^undo/ }).click();
    await one.waitForFunction(() => document.querySelector('.sentence').textContent.includes('8 mm high'), null, { timeout: 60000 });
    console.log('undo in the first tab works');
    for (const [wait, said] of [[0, 0], [60, 60], [180, 240]]) {
      await pause(1000 * wait);
      console.log(`memory ${said} s after: ${megabytes()} MB`);
    }
  } finally {
    clearInterval(watch);
    agent.destroy();
    await browser.close();
    server.kill();
    fs.rmSync(job, { recursive: true });
  }
})();
