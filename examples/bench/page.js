// The program of the page: it hands what was typed to the library and shows what comes back. It knows no engine.
"use strict";
const $ = id => document.getElementById(id), form = $("form"), pane = $("pane"), draft = "job on the bench";
const words = JSON.parse($("words").textContent);
let job = "", name = "", step, shown = {}, undone = [], queue = Promise.resolve(), showing = false, sheet = "", clock, engine;

// One road to the library goes to the program that serves this page, the other to the one that is in it.
async function ask(request) {
	const body = JSON.stringify(request);
	if ($("engine")) return JSON.parse((await (engine ??= unpack()))(body));
	const answer = await fetch("turn", { method: "POST", headers: { "Content-Type": "application/json" }, body });
	if (!answer.ok) throw new Error(await answer.text());
	return answer.json();
}

async function unpack() {
	if (!globalThis.DecompressionStream || !globalThis.WebAssembly) throw new Error(words.old);
	const text = $("engine").textContent, packed = new Uint8Array(text.length / 5 * 4), view = new DataView(packed.buffer);
	for (let i = 0, at = 0; i < text.length; at += 4) {
		let n = 0;
		for (const end = i + 5; i < end; i++) n = n * 85 + digits[text.charCodeAt(i)];
		view.setUint32(at, n);
	}
	const plain = new Blob([packed.subarray(0, $("engine").dataset.size)]).stream().pipeThrough(new DecompressionStream("gzip")), go = new Go();
	const { instance } = await WebAssembly.instantiate(await new Response(plain).arrayBuffer(), go.importObject);
	go.run(instance).then(() => engine = null); // should it ever end, it is started anew
	return globalThis.benchTurn;
}
const digits = new Uint8Array(128);
[...words.digits].forEach((c, i) => digits[c.charCodeAt(0)] = i);

const keep = what => { try { return what(localStorage); } catch { return null; } };
const tell = text => { pane.classList.toggle("void", text !== ""); $("banner").textContent = text; };

// Turns are taken one after the other; what was done and not answered goes with the next.
function turn(request = {}) {
	queue = queue.then(async () => {
		const sent = undone.length;
		const answer = await ask({ job, entries: undone, ...request });
		undone.splice(0, sent);
		show(answer);
	}).catch(error => tell(words.failed + error.message));
}

function show(answer) {
	const at = document.activeElement, here = at?.id && form.contains(at) && { id: at.id, value: at.value, from: at.selectionStart, to: at.selectionEnd, typed: typed(at) };
	const moved = answer.step !== step;
	({ job, name, step } = answer);
	showing = true; // what is taken out of the page loses the focus, and is not done typing
	for (const part of answer.form ?? []) {
		let box = $(part.id);
		if (!box) {
			form.insertAdjacentHTML("beforeend", `<details class="part" id="${part.id}"><summary><h2></h2><span class="mark"></span></summary><div></div></details>`);
			(box = $(part.id)).querySelector("h2").textContent = part.title;
		}
		box.querySelector(".mark").textContent = part.mark;
		if (moved) box.open = part.open || box.contains(at);
		if (shown[part.id] === part.html) continue;
		const open = [...box.querySelectorAll("details[open]")].map(d => d.id);
		box.lastElementChild.innerHTML = shown[part.id] = part.html;
		for (const id of open) if ($(id)) $(id).open = true;
	}
	$("head").innerHTML = answer.head;
	if (answer.sheet && answer.sheet !== sheet) $("sheet").innerHTML = answer.sheet;
	sheet = answer.sheet || sheet;
	tell(answer.sheet || !sheet ? "" : words.stale);
	if (here && $(here.id) && $(here.id) !== document.activeElement) {
		const box = $(here.id);
		box.focus({ preventScroll: true });
		if (here.typed) box.value = here.value;
		if (here.from != null) box.setSelectionRange(here.from, here.to);
	}
	showing = false;
	if (typed(document.activeElement)) tell(words.typing);
	keep(store => store.setItem(draft, job));
}

const typed = box => box?.matches?.("#form input:not([type=checkbox])") && box.value !== box.defaultValue;

// Done hands over what stands in the boxes of a field.
function done(control) {
	const box = control.closest("[data-at]"), controls = [...box.querySelectorAll("input, select")];
	if (control.matches(".unit") && !controls.some(c => c.matches("input:not([type=hidden])") && c.value)) return; // the number is still to come
	enter(control, { do: "set", at: box.dataset.at, parts: controls.map(c => c.type !== "checkbox" || c.checked ? c.value : "") });
}

function enter(control, entry) {
	undone.push(entry);
	delete shown[control.closest(".part")?.id];
	tell(words.pending);
	turn();
}

form.addEventListener("submit", event => event.preventDefault());
form.addEventListener("input", event => { if (typed(event.target)) tell(words.typing); });
form.addEventListener("focusout", event => {
	const box = event.target.closest("[data-at]");
	if (showing || !box || box.contains(event.relatedTarget)) return; // a window is typed when both its boxes are
	const control = [...box.querySelectorAll("input")].find(typed);
	if (control) done(control);
	else if (pane.classList.contains("void")) turn();
});
form.addEventListener("change", event => {
	const control = event.target;
	if (control.dataset.do) enter(control, { ...control.dataset, parts: [control.checked ? "on" : ""] });
	else if (control.matches("select, [type=checkbox]") && control.closest("[data-at]")) done(control);
});
form.addEventListener("keydown", event => {
	if (event.key !== "Enter" || !event.target.matches("input:not([type=checkbox])")) return;
	const boxes = [...form.querySelectorAll("input:not([type=hidden])")].filter(box => box.checkVisibility());
	(boxes[boxes.indexOf(event.target) + 1] ?? event.target).focus();
	if (typed(event.target)) done(event.target);
});
form.addEventListener("focusin", event => {
	const cell = event.target.closest("[data-row], [data-column]");
	for (const line of cell?.closest(".grid").querySelectorAll("svg [data-row], svg [data-column]") ?? [])
		line.classList.toggle("here", line.dataset.row ? line.dataset.row === cell.dataset.row : line.dataset.column === cell.dataset.column);
});
document.addEventListener("click", event => {
	const link = event.target.closest("a[href^='#']"), button = event.target.closest("button"), to = link && $(link.hash.slice(1));
	if (to) {
		event.preventDefault();
		for (let d = to; d; d = d.parentElement) if (d.matches("details")) d.open = true;
		to.scrollIntoView({ block: "center" });
		to.querySelector("input:not([type=hidden]), select, button")?.focus();
	} else if (button?.dataset.clock) tick(button);
	else if (button?.dataset.do) {
		const { do: deed, at, part } = button.dataset, choice = button.parentElement.querySelector("select[data-parts]");
		enter(button, { do: deed, at, parts: [part ?? choice?.value ?? ""] });
	}
});

// Tick starts a clock, or stops it and writes down how long it ran.
function tick(button) {
	const box = $(button.dataset.clock), since = () => Math.round((Date.now() - clock.from) / 1000);
	if (!clock) clock = { of: box.id, from: Date.now(), timer: setInterval(() => { const b = document.querySelector(`[data-clock="${clock.of}"]`); if (b) b.textContent = `${b.dataset.stop} ${since()} s`; }, 500) };
	else if (clock.of === box.id) {
		clearInterval(clock.timer);
		box.value = String(since());
		clock = null;
		done(box);
	}
}

$("open").addEventListener("change", async event => {
	const file = event.target.files[0];
	if (file) turn({ open: await file.text() });
	event.target.value = "";
});
$("save").addEventListener("click", () => {
	const link = document.createElement("a");
	link.href = URL.createObjectURL(new Blob([job], { type: "application/json" }));
	link.download = name;
	link.click();
	setTimeout(() => URL.revokeObjectURL(link.href), 60000);
});
$("new").addEventListener("click", () => { if (confirm(words.sure)) { sheet = ""; $("sheet").textContent = words.noSheet; turn({ job: "", entries: [] }); } });
$("print").addEventListener("click", () => print());
const keeps = keep(store => { store.setItem(draft + "?", "1"); store.removeItem(draft + "?"); return true; });
$("kept").textContent = keeps ? words.kept : words.notKept;
addEventListener("beforeunload", event => { if (!keeps && sheet) event.preventDefault(); });
turn({ job: keep(store => store.getItem(draft)) ?? "" });
