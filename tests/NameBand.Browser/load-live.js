// Many live tabs and lent screens, over and over, to see whether memory stays flat; all on this computer. Not a test. One tab stands in
// a browser, and the change is made there; the others have the page's line and no browser (circuit.js).
// Build the Release program and the browser tests first, then run it with the Node that comes with the driver:
//   tests/NameBand.Browser/bin/Release/net10.0/.playwright/node/linux-x64/node tests/NameBand.Browser/load-live.js [TABS [SCREENS [ROUNDS [HOURS [REST SECONDS]]]]]
// NAMEBAND_GCDUMP names the program dotnet-gcdump: then it is told after each round how much is really alive, and how many lines of tabs.

const fs = require('fs'), http = require('http'), os = require('os'), path = require('path');
const { execFileSync, spawn } = require('child_process');
const root = path.resolve(__dirname, '../..');
const { openTab } = require('./circuit.js');
const { chromium } = require(path.join(__dirname, 'bin/Release/net10.0/.playwright/package'));
const program = process.env.NAMEBAND_PROGRAM ?? path.join(root, 'src/NameBand.Cli/bin/Release/net10.0/nameband.dll');
const bare = '/usr/bin/chromium-headless-shell';

const [tabs = 200, screens = 50, rounds = 6, hours = 24, rest = 200] = process.argv.slice(2).map(Number);
const lookEverySeconds = 1.5;   // as machine.js
const pause = ms => new Promise(done => setTimeout(done, ms));
const job = fs.mkdtempSync(path.join(os.tmpdir(), 'load-'));
fs.cpSync(path.join(root, 'samples/lantern-walk'), job, { recursive: true });
// NAMEBAND_START: how the program is started elsewhere than here, such as “/usr/lib/wine/wine64 bundles/nameband-windows/program/nameband.exe”.
const [command, ...first] = process.env.NAMEBAND_START?.split(' ') ?? ['dotnet', program];
const server = spawn(command, [...first, 'page', job, '--no-browser', '--lend']);
const megabytes = () => Math.round(Number(/VmRSS:\s+(\d+)/.exec(fs.readFileSync(`/proc/${server.pid}/status`, 'utf8'))[1]) / 1024);
const alive = () => {
  if (!process.env.NAMEBAND_GCDUMP) return '';
  const dump = path.join(job, 'alive.gcdump');
  execFileSync(process.env.NAMEBAND_GCDUMP, ['collect', '-p', server.pid, '-o', dump], { stdio: 'ignore' });
  const told = execFileSync(process.env.NAMEBAND_GCDUMP, ['report', dump], { encoding: 'utf8', maxBuffer: 1e9 });
  fs.rmSync(dump);
  if (process.env.NAMEBAND_GCDUMP_INTO) fs.writeFileSync(path.join(process.env.NAMEBAND_GCDUMP_INTO, `${Date.now()}.txt`), told);
  const bytes = /([\d,.]+)\s+GC Heap bytes/.exec(told)[1].replace(/\D/g, ''), objects = /([\d,.]+)\s+GC Heap objects/.exec(told)[1];
  const lines = /\s([\d,.]+)\s+Microsoft\.AspNetCore\.Components\.Server\.Circuits\.CircuitHost\s/.exec(told);
  return `; alive ${(bytes / 1e6).toFixed(1)} MB in ${objects} objects, ${lines ? lines[1] : 0} lines of tabs`;
};
const agent = new http.Agent({ keepAlive: true, maxSockets: screens });

const ask = (url, { method = 'GET', headers = {}, body } = {}) => new Promise((done, lost) => {
  const request = http.request(url, { method, headers, agent, timeout: 60000 }, answer => {
    let text = '';
    answer.on('data', d => { text += d; });
    answer.on('end', () => done({ status: answer.statusCode, headers: answer.headers, text }));
  });
  request.on('timeout', () => request.destroy(new Error('no answer in a minute')));
  request.on('error', lost);
  request.end(body);
});

(async () => {
  const address = await new Promise((found, lost) => {
    let said = '';
    server.stdout.on('data', d => { said += d; const m = /http:\/\/127\.0\.0\.1:\d+\/open\/[a-z0-9-]{23}(?=\s)/.exec(said); if (m) found(m[0]); });
    server.on('exit', () => lost(new Error(said)));
  });
  const browser = await chromium.launch({ executablePath: fs.existsSync(bare) ? bare : '/usr/bin/chromium', args: ['--no-sandbox'] });
  try {
    const context = await browser.newContext({ viewport: { width: 800, height: 600 } });
    context.setDefaultTimeout(600000);
    const one = await context.newPage();
    await one.goto(address);
    await one.waitForSelector('[data-alive]');
    await one.waitForFunction(() => !document.querySelector('.sentence').textContent.includes('counting'));
    const worktable = new URL(one.url()).origin + '/';
    console.log(`one tab, all counted: ${megabytes()} MB${alive()}`);

    const own = await context.newPage();
    await own.goto(worktable + 'machine');
    const told = own.locator('.lend strong');
    const lent = await told.nth(0).innerText();
    const cookies = [];
    let code = '';
    while (cookies.length < screens) {
      if (cookies.length) await own.getByRole('button', { name: 'New code' }).click();
      await own.waitForFunction(before => { const c = document.querySelector('.lend .code'); return c && c.textContent !== before; }, code);
      code = await told.nth(1).innerText();
      const answer = await ask(lent + 'code', { method: 'POST', headers: { 'Content-Type': 'application/x-www-form-urlencoded' }, body: `code=${encodeURIComponent(code)}` });
      cookies.push(answer.headers['set-cookie'][0].split(';')[0]);
      await own.waitForFunction(() => !document.querySelector('.lend .code'));
    }
    await own.close();
    console.log(`${screens} screens have the lent view: ${megabytes()} MB`);

    const ownCookie = (await context.cookies(worktable)).map(c => `${c.name}=${c.value}`).join('; ');
    let asked = 0, wrong = 0;
    for (let round = 1; round <= rounds; round++) {
      const begun = Date.now();
      const others = [];
      for (let i = 1; i < tabs; i++) others.push(await openTab(worktable, ownCookie));
      await Promise.all(others.map(tab => tab.saw('mm high')));
      const live = megabytes(), liveAfter = Math.round((Date.now() - begun) / 1000);
      const height = 7 + round % 3 * 0.5;
      if (await one.locator('#panel').count() === 0) await one.getByRole('button', { name: /^[\d.]+ mm$/ }).first().click();
      const field = one.getByLabel('Height', { exact: true });
      await field.fill(`${height} mm`);
      await field.press('Enter');
      await one.waitForFunction(h => document.querySelector('.sentence').textContent.includes(h), `${height} mm high`);
      await Promise.all(others.map(tab => tab.saw(`${height} mm high`)));

      // Meanwhile every lent screen looks how things are, as often as it would in those hours divided by the rounds.
      const looks = Math.round(hours * 3600 / lookEverySeconds / rounds);
      const stamps = await Promise.all(cookies.map(async Cookie => {
        let stamp = '';
        for (let i = 0; i < looks; i++) {
          const answer = await ask(`${lent}machine/state?stamp=${encodeURIComponent(stamp)}`, { headers: { Cookie } });
          asked++;
          if (answer.status === 200) stamp = JSON.parse(answer.text).stamp; else if (answer.status !== 204) wrong++;
        }
        return stamp;
      }));
      const busy = megabytes();
      const lost = others.filter(tab => tab.trouble()).length;
      // One in ten closes without a word, as when a computer falls asleep.
      for (const [i, tab] of others.entries()) await tab.close(i % 10 > 0);
      await pause(rest * 1000);
      const seen = new Set(stamps).size === 1 ? 'all screens see the same' : 'SCREENS DIFFER';
      console.log(
        `${new Date().toISOString().slice(11, 19)} round ${round}: ${tabs} live tabs after ${liveAfter} s ${live} MB, ` +
        `all follow a change, ${lost} lost; ${seen}, ${asked} looks so far, ${wrong} wrong, ${busy} MB; ` +
        `${rest} s after: ${megabytes()} MB${alive()} (${Math.round((Date.now() - begun) / 1000)} s)`);
    }
  } finally {
    agent.destroy();
    await browser.close();
    server.kill();
    fs.rmSync(job, { recursive: true });
  }
})();
