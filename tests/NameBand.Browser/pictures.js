// Makes the pictures of docs/page.md anew from the sample job, and beside them page-says.txt: what they say, for the tests. Build the Release program and the browser tests first:
//   tests/NameBand.Browser/bin/Release/net10.0/.playwright/node/linux-x64/node tests/NameBand.Browser/pictures.js [FOLDER]

const fs = require('fs'), os = require('os'), path = require('path');
const { spawn, spawnSync } = require('child_process');
const root = path.resolve(__dirname, '../..');
const { chromium } = require(path.join(__dirname, 'bin/Release/net10.0/.playwright/package'));
const program = process.env.NAMEBAND_PROGRAM ?? path.join(root, 'src/NameBand.Cli/bin/Release/net10.0/nameband.dll');
const to = process.argv[2] ?? path.join(root, 'docs/pictures');

(async () => {
  const job = fs.mkdtempSync(path.join(os.tmpdir(), 'pictures-'));
  fs.cpSync(path.join(root, 'samples/lantern-walk'), job, { recursive: true });
  spawnSync('dotnet', [program, 'make', job]);
  const server = spawn('dotnet', [program, 'page', job, '--no-browser']);
  const [address, url] = await new Promise((found, lost) => {
    let said = '';
    server.stdout.on('data', d => { said += d; const m = /(http:\/\/127\.0\.0\.1:\d+\/)open\/[a-z0-9-]{23}(?=\s)/.exec(said); if (m) found(m); });
    server.on('exit', () => lost(new Error(said)));
  });
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 1000 }, reducedMotion: 'reduce' });
    await page.goto(address);
    await page.waitForURL(url);
    await page.waitForFunction(() => /names on/.test(document.querySelector('.sentence')?.textContent) && !/counting/.test(document.querySelector('.sentence').textContent), null, { timeout: 120000 });
    await page.waitForSelector('[data-part=table]:not([data-thread=""])');
    await page.waitForTimeout(1500);
    const says = async what => (await page.locator(what).first().innerText()).replace(/\s+/g, ' ').trim();
    const said = [await says('.sentence')];
    await page.screenshot({ path: path.join(to, 'page-plan.png') });
    await page.setViewportSize({ width: 1100, height: 900 });
    await page.goto(url + 'machine');
    await page.waitForSelector('[data-pictured]');
    await page.waitForFunction(() => /to sew: about/.test(document.querySelector('.machine-left')?.textContent), null, { timeout: 120000 });
    await page.waitForTimeout(2500);
    said.push(await says('#machine h2'), await says('.machine-left'));
    await page.screenshot({ path: path.join(to, 'page-machine.png') });
    fs.writeFileSync(path.join(to, 'page-says.txt'), said.join('\n') + '\n');
  } finally {
    await browser.close();
    server.kill();
    fs.rmSync(job, { recursive: true });
  }
})();
