// A live tab without a browser: it opens the page's line as a browser would, acknowledges every picture of the page and answers
// what the page asks of its scripts, and draws nothing. So two hundred of them try the page's server and not the browser.
// The line is .NET's: a SignalR connection (its hub protocol's messages, each before its length, in MessagePack).

const handshake = Buffer.from('{"protocol":"blazorpack","version":1}\x1e');
const invocation = 1, completion = 3, ping = 6;   // message types of the hub protocol
const answersWithObject = 1;                       // JSCallResultType.JSObjectReference

/** Opens a tab at ADDRESS with the cookie that a browser has there. */
exports.openTab = async (address, Cookie) => {
  const { origin, host } = new URL(address);
  const headers = { Cookie, Origin: origin };
  const page = await fetch(address, { headers: { Cookie, Accept: 'text/html' } }).then(answer => answer.text());
  const markers = [...page.matchAll(/<!--Blazor:(\{.*?\})-->/g)].map(found => JSON.parse(found[1])).filter(marker => marker.descriptor);
  const state = /<!--Blazor-Server-Component-State:([A-Za-z0-9+/=]+)-->/.exec(page)?.[1] ?? '';
  if (!markers.length) throw new Error(`No live part in the page: ${page.slice(0, 200)}`);

  const { connectionToken } = await fetch(`${origin}/_blazor/negotiate?negotiateVersion=1`, { method: 'POST', headers })
    .then(answer => answer.json());
  const line = new WebSocket(`ws://${host}/_blazor?id=${encodeURIComponent(connectionToken)}`, { headers });
  line.binaryType = 'arraybuffer';
  const said = new Said();
  let isGreeted = false, objects = 0, trouble = null, circuit = null;
  const send = (target, ...values) => line.send(framed([invocation, {}, null, target, values, []]));
  const lose = what => { trouble ??= what; said.end(new Error(what)); };

  const heard = {
    'JS.RenderBatch': (id, batch) => { said.add(batch); send('OnRenderCompleted', id, null); },
    'JS.BeginInvokeJS': (task, name, values, result) => {
      if (!task) return;
      const value = result === answersWithObject ? { __jsObjectId: ++objects } : null;
      send('EndInvokeJSFromDotNet', task, true, JSON.stringify([task, true, value]));
    },
    'JS.Error': what => lose(`The page failed: ${what}`),
  };
  line.onmessage = ({ data }) => {
    let bytes = Buffer.from(data);
    if (!isGreeted) {
      isGreeted = true;
      bytes = bytes.subarray(bytes.indexOf(0x1e) + 1);
      line.send(framed([invocation, {}, '0', 'StartCircuit', [`${origin}/`, address, '[]', ''], []]));
    }
    for (const [type, , id, ...rest] of messages(bytes)) {
      if (type === ping) line.send(framed([ping]));
      else if (type === completion && id === '0') {
        circuit = rest[1];
        const operations = markers.map((marker, at) => ({ type: 'add', ssrComponentId: at + 1, marker }));
        send('UpdateRootComponents', JSON.stringify({ batchId: 1, operations }), state);
      } else if (type === invocation) heard[rest[0]]?.(...rest[1]);
    }
  };
  line.onclose = () => lose('The line was closed.');
  line.onerror = () => lose('The line failed.');
  await new Promise((open, failed) => { line.onopen = open; said.failed = failed; });
  line.send(handshake);

  return {
    /** Once the page has said TEXT in this tab. */
    saw: text => said.has(text),
    trouble: () => trouble,
    /** Closes it, with the word that a browser says then or, as when a computer falls asleep, without. */
    close: async isSaid => {
      line.onclose = line.onerror = null;
      if (isSaid) {
        const body = new FormData();
        body.set('circuitId', circuit);
        await fetch(`${origin}/_blazor/disconnect`, { method: 'POST', headers, body });
      }
      line.close();
    },
  };
};

/** What the pictures of the page have said so far; only the last of it is kept. */
class Said {
  static patience = 600_000;   // milliseconds: ten minutes, as for the tab in the browser
  static kept = 200_000;   // bytes: more than the largest picture of the page, which is the first
  #last = Buffer.alloc(0);
  #waiting = [];
  add(batch) {
    this.#last = Buffer.concat([this.#last, batch]).subarray(-Said.kept);
    this.#waiting = this.#waiting.filter(({ text, found }) => !(this.#last.includes(text) && (found(), true)));
  }
  has(text) {
    if (this.#last.includes(text)) return Promise.resolve();
    return new Promise((found, lost) => {
      this.#waiting.push({ text, found, lost });
      setTimeout(() => lost(new Error(`The page has not said this in ten minutes: ${text}`)), Said.patience).unref();
    });
  }
  end(error) {
    this.failed?.(error);
    for (const { lost } of this.#waiting) lost(error);
    this.#waiting = [];
  }
}

/** A message as it goes over the line: its length in sevens of bits, then itself. */
function framed(message) {
  const body = packed(message);
  const length = [];
  for (let left = body.length; ; left >>>= 7) {
    length.push(left > 127 ? left & 127 | 128 : left);
    if (left < 128) break;
  }
  return Buffer.concat([Buffer.from(length), body]);
}

function* messages(bytes) {
  for (let at = 0; at < bytes.length;) {
    let length = 0, shift = 0, byte;
    do { byte = bytes[at++]; length |= (byte & 127) << shift; shift += 7; } while (byte > 127);
    yield unpacked(bytes.subarray(at, at + length));
    at += length;
  }
}

/** MessagePack of what is said here: nothing, truth, whole numbers from 0 on, text, lists, and a map without keys. */
function packed(value) {
  if (value === null) return Buffer.from([0xc0]);
  if (typeof value === 'boolean') return Buffer.from([value ? 0xc3 : 0xc2]);
  if (typeof value === 'number') {
    const number = Buffer.alloc(9, 0xcf);
    number.writeBigUInt64BE(BigInt(value), 1);
    return number;
  }
  if (Array.isArray(value)) return Buffer.concat([sized(0xdd, value.length), ...value.map(packed)]);
  if (typeof value === 'object') return sized(0xdf, 0);
  const text = Buffer.from(value);
  return Buffer.concat([sized(0xdb, text.length), text]);
}

function sized(kind, length) {
  const head = Buffer.alloc(5, kind);
  head.writeUInt32BE(length, 1);
  return head;
}

/** What a message in MessagePack says; bytes stay bytes. */
function unpacked(bytes) {
  let at = 0;
  const take = length => bytes.subarray(at, at += length);
  const whole = length => take(length).readUIntBE(0, length);
  const list = length => Array.from({ length }, next);
  const map = length => Object.fromEntries(Array.from({ length }, () => [next(), next()]));
  const kinds = {
    0xc0: () => null, 0xc2: () => false, 0xc3: () => true,
    0xc4: () => take(whole(1)), 0xc5: () => take(whole(2)), 0xc6: () => take(whole(4)),
    0xca: () => take(4).readFloatBE(), 0xcb: () => take(8).readDoubleBE(),
    0xcc: () => whole(1), 0xcd: () => whole(2), 0xce: () => whole(4), 0xcf: () => Number(take(8).readBigUInt64BE()),
    0xd0: () => take(1).readInt8(), 0xd1: () => take(2).readInt16BE(), 0xd2: () => take(4).readInt32BE(),
    0xd3: () => Number(take(8).readBigInt64BE()),
    0xd9: () => take(whole(1)).toString(), 0xda: () => take(whole(2)).toString(), 0xdb: () => take(whole(4)).toString(),
    0xdc: () => list(whole(2)), 0xdd: () => list(whole(4)), 0xde: () => map(whole(2)), 0xdf: () => map(whole(4)),
  };
  function next() {
    const kind = bytes[at++];
    if (kind < 0x80) return kind;
    if (kind < 0x90) return map(kind & 15);
    if (kind < 0xa0) return list(kind & 15);
    if (kind < 0xc0) return take(kind & 31).toString();
    if (kind >= 0xe0) return kind - 256;
    return kinds[kind]();
  }
  return next();
}
