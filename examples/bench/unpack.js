// What both pages begin with: how the library that is inside one is unpacked and started. It gives the page one function.
"use strict";
const $ = id => document.getElementById(id), words = JSON.parse($("words").textContent), digits = Object.fromEntries([...words.digits].map((c, i) => [c.charCodeAt(0), i]));
let engine;
const library = gives => engine ??= unpack(gives);
async function unpack(gives) {
	if (!globalThis.DecompressionStream) throw new Error(words.old); // WebAssembly is older
	const text = $("engine").textContent, bytes = new Uint8Array($("engine").dataset.size), go = new Go();
	for (let i = 0, at = 0, bits = 0, held = 0; i < text.length; i += 2) {
		held |= digits[text.charCodeAt(i)] + digits[text.charCodeAt(i + 1)] * 182 << bits;
		for (bits += 15; bits > 7; bits -= 8, held >>= 8) bytes[at++] = held;
	}
	const plain = await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
	go.run((await WebAssembly.instantiate(plain, go.importObject)).instance).then(() => engine = null); // should it end, it is started anew
	return globalThis[gives];
}
