// Gives the page a picture of a wall: a bore of 67 mm with lines at 40° included and a label of 8 by 4 mm, as a camera sees it
// that looks square at the wall. Returns where the corners of the label are.
(async () => {
	const wide = 640, high = 480, focal = 800, away = 24, radius = 33.5, half = 20 * Math.PI / 180, from = radius - away;
	let seed = 1;
	const chance = () => (seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) / 2 ** 31 - 1;
	const shift = Array.from({ length: 400 }, () => 0.4 * chance()), canvas = document.createElement("canvas");
	[canvas.width, canvas.height] = [wide, high];
	const pen = canvas.getContext("2d"), data = pen.createImageData(wide, high);
	for (let j = 0; j < high; j++) for (let i = 0; i < wide; i++) {
		const u = (i + .5 - wide / 2) / focal, v = (j + .5 - high / 2) / focal;
		const t = (Math.sqrt(radius ** 2 * (1 + u * u) - (from * u) ** 2) - from) / (1 + u * u);
		const x = radius * Math.atan2(t * u, from + t), y = -t * v;
		let g = 150;
		if (Math.abs(x) <= 4 && Math.abs(y) <= 2) g = 225;
		else for (const k of [1, -1]) {
			const at = (y * Math.cos(half) - x * Math.sin(half) * k) / .5, whole = Math.floor(at);
			for (let n = whole - 1; n <= whole + 2; n++) g -= 40 * Math.exp(-(((at - n - shift[n + 200 + 37 * k]) * 5) ** 2));
		}
		data.data.set([g, g, g].map(c => Math.max(10, c + 3 * chance())).concat(255), 4 * (j * wide + i));
	}
	pen.putImageData(data, 0, 0);
	const files = new DataTransfer();
	files.items.add(new File([await new Promise(done => canvas.toBlob(done))], "wall.png", { type: "image/png" }));
	$("picture").files = files.files;
	$("picture").dispatchEvent(new Event("change"));
	while (!$("size").textContent) await new Promise(done => setTimeout(done, 20));
	const z = radius * Math.cos(4 / radius) - from;
	return [[-1, 1], [1, 1], [1, -1], [-1, -1]].flatMap(([round, along]) => [wide / 2 + focal * round * radius * Math.sin(4 / radius) / z, high / 2 - focal * along * 2 / z]);
})()
