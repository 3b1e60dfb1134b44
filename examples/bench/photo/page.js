// The program of the page: it shows a picture, takes down four corners, and hands both to the library.
const whole = $("whole-picture"), near = $("near");
const reach = 20, boxes = [...document.querySelectorAll("[data-corner]")];
let picture, corner = 0;
const at = i => [0, 1].map(k => parseFloat(boxes[2 * i + k].value.replace(",", ".")));
// Draws the picture with its corners, and large what is near the one that is being marked.
function draw() {
	if (!picture) return;
	const pen = whole.getContext("2d"), [x, y] = at(corner), size = picture.width / 60;
	pen.drawImage(picture, 0, 0);
	pen.lineWidth = picture.width / 400;
	for (let i = 0; i < 4; i++) {
		const [x, y] = at(i);
		if (isNaN(x + y)) continue;
		pen.strokeStyle = i === corner ? "#e0007a" : "#00c8d8";
		pen.strokeRect(x - size / 2, y - size / 2, size, size);
		pen.font = `${2 * size}px sans-serif`;
		pen.strokeText(i + 1, x + size, y - size / 2);
	}
	const glass = near.getContext("2d"), scale = near.width / (2 * reach);
	glass.clearRect(0, 0, near.width, near.height);
	if (isNaN(x + y)) return;
	glass.imageSmoothingEnabled = false;
	glass.drawImage(picture, x - reach, y - reach, 2 * reach, 2 * reach, 0, 0, near.width, near.height);
	glass.strokeStyle = "#e0007a";
	glass.strokeRect(near.width / 2 - scale / 2, near.height / 2 - scale / 2, scale, scale);
	glass.strokeRect(near.width / 2 - .5, near.height / 2 - .5, 1, 1);
}
function mark(x, y) {
	[boxes[2 * corner].value, boxes[2 * corner + 1].value] = [x, y].map(v => v.toFixed(1));
	draw();
}
function choose(i) {
	corner = i;
	$("corner-" + i).checked = true;
	draw();
}
$("picture").addEventListener("change", async ({ target }) => {
	try {
		picture = await createImageBitmap(target.files[0]);
		[whole.width, whole.height] = [picture.width, picture.height];
		$("size").textContent = `${picture.width} × ${picture.height}`;
		for (const box of boxes) box.value = "";
		$("answer").textContent = "";
		choose(0);
	} catch (error) { $("answer").textContent = words.notOpened + error.message; }
});
whole.addEventListener("pointerdown", event => {
	if (!picture) return;
	const box = whole.getBoundingClientRect();
	mark((event.clientX - box.left) * picture.width / box.width, (event.clientY - box.top) * picture.height / box.height);
});
near.addEventListener("pointerdown", event => {
	const box = near.getBoundingClientRect(), [x, y] = at(corner);
	if (!isNaN(x + y)) mark(x + ((event.clientX - box.left) / box.width - .5) * 2 * reach, y + ((event.clientY - box.top) / box.height - .5) * 2 * reach);
});
near.addEventListener("keydown", event => { // half a pixel a time
	const step = { ArrowLeft: [-.5, 0], ArrowRight: [.5, 0], ArrowUp: [0, -.5], ArrowDown: [0, .5] }[event.key], [x, y] = at(corner);
	if (!step || isNaN(x + y)) return;
	event.preventDefault();
	mark(x + step[0], y + step[1]);
});
for (let i = 0; i < 4; i++) $("corner-" + i).addEventListener("change", () => choose(i));
for (const [k, box] of boxes.entries()) box.addEventListener("input", () => choose(k >> 1));
async function measure() {
	if (!picture) return $("answer").textContent = words.noPicture;
	$("answer").textContent = words.waiting;
	try {
		const sheet = new OffscreenCanvas(picture.width, picture.height).getContext("2d");
		sheet.drawImage(picture, 0, 0);
		const asked = { corners: boxes.map(box => box.value) };
		for (const id of ["bore", "round", "along", "marking"]) asked[id] = $(id).value;
		for (const id of ["arrowed", "whole"]) asked[id] = $(id).checked;
		const found = (await library("photoTurn"))(sheet.getImageData(0, 0, picture.width, picture.height).data, picture.width, picture.height, JSON.stringify(asked));
		$("answer").innerHTML = found.html;
		$("seen-figure").hidden = !found.seen;
		if (found.seen) [$("seen").width, $("seen").height] = [found.width, found.height], $("seen").getContext("2d").putImageData(new ImageData(found.seen, found.width, found.height), 0, 0);
	} catch (error) { $("answer").textContent = words.failed + error.message; }
}
let running = Promise.resolve();
$("measure").addEventListener("click", () => running = measure());
