// The program of the page: it hands what was typed to the library and shows what comes back. It knows no engine.
const form = $("form"), pane = $("pane"), draft = "job on the bench", shown = {};
let job = "", name = "", step, sheet = "", standing = "", undone = [], showing = false, clock, queue = Promise.resolve();
// One road to the library goes to the program that serves this page, the other to the one that is in it.
async function ask(request) {
	const body = JSON.stringify(request);
	if ($("engine")) return JSON.parse((await library("benchTurn"))(body));
	const answer = await fetch("turn", { method: "POST", headers: { "Content-Type": "application/json" }, body });
	if (!answer.ok) throw new Error(await answer.text());
	return answer.json();
}
const keep = what => { try { return what(localStorage); } catch { return null; } };
const tell = text => { pane.classList.toggle("void", text !== ""); $("banner").textContent = text; };
const typed = box => box?.matches?.("#form input:not([type=checkbox]), #form textarea") && box.value !== box.defaultValue;

// Turns are taken one after the other; what was done and not answered goes with the next.
function turn(request) {
	queue = queue.then(async () => {
		const sent = undone.length, answer = await ask({ job, entries: undone, ...request });
		undone.splice(0, sent);
		show(answer);
	}).catch(error => tell(standing = words.failed + error.message));
}
function show(answer) {
	const at = document.activeElement, moved = answer.step !== step;
	const here = at?.id && form.contains(at) && { id: at.id, value: at.value, from: at.selectionStart, to: at.selectionEnd, typed: typed(at) };
	({ job, name, step } = answer);
	showing = true; // what is taken out of the page loses the focus, and is not done typing
	for (const part of answer.form ?? []) {
		if (!$(part.id)) form.insertAdjacentHTML("beforeend", `<details class="part" id="${part.id}"><summary><h2></h2><span class="mark"></span></summary><div></div></details>`);
		const box = $(part.id), open = [...box.querySelectorAll("details[open]")].map(d => d.id);
		[box.querySelector("h2").textContent, box.querySelector(".mark").textContent] = [part.title, part.mark];
		if (moved) box.open = part.open || box.contains(at);
		if (shown[part.id] === part.html) continue;
		box.lastElementChild.innerHTML = shown[part.id] = part.html;
		for (const id of open) if ($(id)) $(id).open = true;
	}
	$("head").innerHTML = answer.head;
	if (answer.sheet && answer.sheet !== sheet) $("sheet").innerHTML = sheet = answer.sheet;
	const again = here && $(here.id);
	if (again && again !== document.activeElement) {
		again.focus({ preventScroll: true });
		if (here.typed) again.value = here.value;
		if (here.from != null) again.setSelectionRange(here.from, here.to);
	}
	for (const button of clock ? document.querySelectorAll(`[data-clock="${clock.id}"]`) : []) button.textContent = button.dataset.stop;
	showing = false;
	tell(standing = answer.sheet || !sheet ? "" : words.stale);
	if (typed(document.activeElement)) tell(words.typing);
	keep(store => store.setItem(draft, job));
}
// Done hands over what stands in the boxes of a field; of a unit whose number is still to come, nothing.
function done(control) {
	const box = control.closest("[data-at]"), controls = [...box.querySelectorAll("input, textarea, select")];
	if (!control.matches(".unit") || controls.some(c => c.matches("input:not([type=hidden]), textarea") && c.value)) enter(control, { do: "set", at: box.dataset.at, parts: controls.map(c => c.type !== "checkbox" || c.checked ? c.value : "") });
}
function enter(control, entry) {
	undone.push(entry);
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
	const boxes = [...form.querySelectorAll("input:not([type=hidden])")].filter(box => box.offsetParent);
	(boxes[boxes.indexOf(event.target) + 1] ?? document.body).focus();
	event.target.blur();
});
form.addEventListener("focusin", ({ target }) => {
	const cell = target.closest("[data-row], [data-column]");
	for (const line of cell?.closest(".grid").querySelectorAll("svg [data-row], svg [data-column]") ?? [])
		line.classList.toggle("here", line.dataset.row ? line.dataset.row === cell.dataset.row : line.dataset.column === cell.dataset.column);
});
document.addEventListener("click", event => {
	const link = event.target.closest("a[href^='#']"), button = event.target.closest("button"), to = link && $(link.hash.slice(1));
	if (to) {
		event.preventDefault();
		for (let d = to; d; d = d.parentElement) if (d.matches("details")) d.open = true;
		to.scrollIntoView({ block: "center" });
		to.querySelector("input:not([type=hidden]), textarea, select, button")?.focus();
	} else if (button?.id === "print") print();
	else if (button?.dataset.clock) tick(button, $(button.dataset.clock));
	else if (button?.dataset.do) enter(button, { ...button.dataset, parts: [button.dataset.part ?? button.parentElement.querySelector("select[data-parts]")?.value ?? ""] });
});
function tick(button, box) { // starts a clock, or stops it and writes down how long it ran
	if (clock && clock.id !== box.id) return;
	if (clock) box.value = Math.round((Date.now() - clock.from) / 1000), clock = done(box);
	else clock = { id: box.id, from: Date.now() }, button.textContent = button.dataset.stop;
}
$("open").addEventListener("change", async ({ target }) => (turn({ open: await target.files[0].text() }), target.value = ""));
$("save").addEventListener("click", () => Object.assign(document.createElement("a"), { href: URL.createObjectURL(new Blob([job], { type: "application/json" })), download: name }).click());
$("new").addEventListener("click", () => { if (confirm(words.sure)) $("sheet").textContent = words.noSheet, sheet = "", turn({ job: "", entries: [] }); });
const keeps = keep(store => (store.setItem(draft + "?", ""), store.removeItem(draft + "?"), true));
$("kept").textContent = keeps ? words.kept : words.notKept;
addEventListener("beforeunload", event => { if (!keeps && sheet) event.preventDefault(); });
turn({ job: keep(store => store.getItem(draft)) ?? "" });
