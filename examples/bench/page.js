// The program of the page: it hands what was typed to the library and shows what comes back. It knows no engine.
const form = $("form"), pane = $("pane"), draft = "job on the bench", shown = {};
let job = "", name = "", step, now = { at: "head" }, sheet = "", standing = "", undone = [], showing = false, clock, queue = Promise.resolve();
async function ask(request) { // the program that is in this page, or the one that serves it
	const body = JSON.stringify(request);
	if ($("engine")) return JSON.parse((await library("benchTurn"))(body));
	const answer = await fetch("turn", { method: "POST", headers: { "Content-Type": "application/json" }, body });
	return answer.ok ? answer.json() : Promise.reject(new Error(await answer.text()));
}
const fields = "input:not([type=hidden]), textarea, select:not(.unit)", level = box => box.getBoundingClientRect().top;
const boxesIn = (part, which) => [...part.querySelectorAll(which)].filter(box => !box.closest("details:not([open])"));
const keep = what => { try { return what(localStorage); } catch { return null; } };
const tell = text => { // what stands against the sheet, there, and in a few words where it is always seen
	[$("banner").textContent, $("next").textContent, $("next").href] = [text, text && text !== words.stale ? text.split(":")[0] : now.words, "#" + now.at];
	document.body.classList.toggle("void", text !== "");
};
const typed = box => box?.matches?.("#form input:not([type=checkbox]), #form textarea") && box.value !== box.defaultValue;
function turn(request) { // one after the other; what was done and not answered goes with the next
	queue = queue.then(async () => {
		await new Promise(free => setTimeout(free)); // until what has the focus next has it
		const sent = undone.length, answer = await ask({ job, entries: undone, ...request });
		undone.splice(0, sent);
		show(answer);
	}).catch(error => tell(standing = words.failed + error.message));
}
function show(answer) {
	const at = document.activeElement, moved = answer.step !== step, field = at?.closest("[data-at]"), busy = field && [...field.querySelectorAll("input, textarea")].some(typed) ? field : null;
	const mark = step === undefined ? null : form.contains(at) && level(at) > 0 && level(at) < innerHeight ? at : document.elementFromPoint(30, innerHeight / 2), was = mark && level(mark);
	({ job, name, step, now } = answer);
	showing = true; // what is taken out of the page loses the focus, and is not done typing
	for (const part of answer.form ?? []) {
		if (!$(part.id)) form.insertAdjacentHTML("beforeend", `<details class="part" id="${part.id}"><summary><h2></h2><span class="mark"></span></summary><div></div></details>`);
		const box = $(part.id);
		[box.querySelector("h2").textContent, box.querySelector(".mark").textContent] = [part.title, part.mark];
		if (moved) box.open = part.open || box.contains(at);
		if (shown[part.id] === part.html) continue;
		change(box.lastElementChild, document.createRange().createContextualFragment(`<div>${shown[part.id] = part.html}</div>`).firstChild, busy);
	}
	$("head").innerHTML = answer.head;
	if (answer.sheet && answer.sheet !== sheet) $("sheet").innerHTML = sheet = answer.sheet;
	for (const button of clock ? document.querySelectorAll(`[data-clock="${clock.id}"]`) : []) button.textContent = button.dataset.stop;
	showing = false;
	point(document.activeElement);
	if (mark?.isConnected) scrollBy(0, level(mark) - was); // what is looked at stays where a finger may be on its way to
	tell(standing = answer.sheet || !sheet ? "" : words.stale);
	if (busy) tell(words.typing);
	keep(store => store.setItem(draft, job));
}
function change(old, to, busy) { // alone what differs: the rest may have the focus, be pressed, or be typed in
	if (old.isEqualNode(to)) return;
	if (old.nodeName !== to.nodeName || old.id !== to.id || !old.attributes) return old.replaceWith(to);
	for (const name of [...old.getAttributeNames(), ...to.getAttributeNames()]) to.hasAttribute(name) ? old.setAttribute(name, to.getAttribute(name)) : name === "open" || old.removeAttribute(name);
	const have = [...old.childNodes], want = [...to.childNodes];
	want.forEach((child, i) => have[i] ? change(have[i], child, busy) : old.append(child));
	for (const child of have.slice(want.length)) child.remove();
	if (old.matches("input, textarea, select") && !busy?.contains(old)) [old.value, old.checked] = [to.value, to.checked];
}
function done(control) { // hands over what stands in the boxes of a field; of a unit whose number is still to come, nothing
	const box = control.closest("[data-at]"), controls = [...box.querySelectorAll("input, textarea, select")];
	if (!control.matches(".unit") || controls.some(c => c.matches("input:not([type=hidden]), textarea") && c.value)) enter(control, { do: "set", at: box.dataset.at, parts: controls.map(c => c.type !== "checkbox" || c.checked ? c.value : "") });
}
function enter(control, entry) {
	undone.push(entry);
	for (const box of [control, ...control.closest("[data-at]").querySelectorAll("input, select, textarea")]) box.dataset.sent = ""; // so that it is written anew
	delete shown[control.closest(".part")?.id];
	tell(words.pending);
	turn();
}
form.addEventListener("input", ({ target }) => typed(target) && tell(words.typing));
form.addEventListener("focusout", event => {
	const box = event.target.closest("[data-at]"), control = box && [...box.querySelectorAll("input, textarea")].find(typed);
	if (showing || box?.contains(event.relatedTarget)) return; // a window is typed when both its boxes are
	control ? done(control) : undone.length || tell(standing);
});
form.addEventListener("change", ({ target }) => {
	if (target.dataset.do) enter(target, { ...target.dataset, parts: [target.checked ? "on" : ""] });
	else if (target.matches("select, [type=checkbox]") && target.closest("[data-at]")) done(target);
});
form.addEventListener("keydown", event => { // as on a keypad, which has no other key that goes on
	if (event.key !== "Enter" || !event.target.matches("input:not([type=checkbox])")) return;
	const boxes = boxesIn(form, fields).filter(box => box === event.target || !box.matches(".at input")), next = boxes[boxes.indexOf(event.target) + 1]; // past the depths of a grid, where a reading would be lost
	event.preventDefault(); // else it opens the choice that comes next
	if (next) return next.focus();
	event.target.blur();
	queue.then(() => lead($($("head").querySelector("a")?.hash.slice(1) ?? "head")));
});
form.addEventListener("focusin", ({ target }) => point(target));
function point(target) { // at the place in the drawing where the gauge is to be held
	const cell = target.closest("[data-row], [data-column]");
	for (const line of cell?.closest(".grid").querySelectorAll("svg [data-row], svg [data-column]") ?? [])
		line.classList.toggle("here", line.dataset.row ? line.dataset.row === cell.dataset.row : line.dataset.column === cell.dataset.column);
}
document.addEventListener("click", event => {
	const link = event.target.closest("a[href^='#']"), button = event.target.closest("button"), to = link && $(link.hash.slice(1));
	if (to) event.preventDefault(), queue.then(() => lead($(link.id === "next" ? now.at : to.id) ?? $("head"))); // once what was left is answered
	else if (button?.id === "print") print();
	else if (button?.dataset.clock) tick(button, $(button.dataset.clock));
	else if (button?.dataset.do) {
		const { part, then } = button.dataset;
		enter(button, { ...button.dataset, parts: [part ?? button.parentElement.querySelector("select[data-parts]")?.value ?? ""] });
		queue.then(() => lead($("head").querySelector(":scope > .fault") ?? $(then) ?? $("head")));
	}
});
function lead(to) { // to the first empty box there, unfolded, or to what is to be read
	for (let d = to; d; d = d.parentElement) if (d.matches("details")) d.open = true;
	const whole = to.closest("[tabindex]"), boxes = boxesIn(to, fields + ", .unit, button");
	(whole ?? to).scrollIntoView({ block: whole ? "start" : "center" });
	(whole ?? boxes.find(box => !box.value) ?? boxes[0])?.focus();
}
function tick(button, box) { // starts a clock, or stops it and writes down how long it ran
	if (!clock) clock = { id: box.id, from: Date.now() }, button.textContent = button.dataset.stop;
	else if (clock.id === box.id) box.value = Math.round((Date.now() - clock.from) / 1000), clock = done(box);
}
$("open").addEventListener("change", async ({ target }) => (turn({ open: await target.files[0].text() }), target.value = ""));
$("save").addEventListener("click", () => Object.assign(document.createElement("a"), { href: URL.createObjectURL(new Blob([job], { type: "application/json" })), download: name }).click());
$("new").addEventListener("click", () => { if (confirm(words.sure)) $("sheet").textContent = words.noSheet, sheet = "", turn({ job: "", entries: [] }); });
const keeps = keep(store => (store.setItem(draft + "?", ""), store.removeItem(draft + "?"), true));
$("kept").textContent = keeps ? words.kept : words.notKept;
addEventListener("beforeunload", event => { if (!keeps && sheet) event.preventDefault(); });
turn({ job: keep(store => store.getItem(draft)) ?? "" });
