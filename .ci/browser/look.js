// Returns what of the page in view scrolls sideways or is cut off, a line each.
(() => {
	const faults = [], root = document.documentElement, wide = root.clientWidth, near = 1; // pixel, of rounding
	if (root.scrollWidth > wide) faults.push(`scrolls sideways: ${root.scrollWidth} of ${wide} pixels`);
	const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	let looked = 0;
	for (let node = texts.nextNode(); node; node = texts.nextNode()) {
		const parent = node.parentElement, drawing = parent.closest("svg"), style = getComputedStyle(parent);
		if (!node.data.trim() || parent.closest("title, desc, style") || style.display === "none") continue;
		const head = parent.closest("thead");
		if (head && getComputedStyle(head).clipPath !== "none") continue; // for screen readers alone, where rows are written out
		const range = document.createRange();
		range.selectNodeContents(node);
		const boxes = drawing ? [parent.getBoundingClientRect()] : [...range.getClientRects()];
		const line = drawing ? 0.15 * boxes[0].height : 0; // a box of letters reaches so far above and below what is inked
		const frame = drawing ? drawing.getBoundingClientRect() : { left: 0, right: wide, top: -Infinity, bottom: Infinity };
		looked++;
		for (const box of boxes) {
			let out = box.left < frame.left - near || box.right > frame.right + near || box.top < frame.top - near - line || box.bottom > frame.bottom + near + line;
			for (let e = parent; e && !drawing && !out; e = e.parentElement) {
				const { overflowX, overflowY } = getComputedStyle(e), own = e.getBoundingClientRect(), scrolls = /auto|scroll/.test(overflowY); // down to it
				out = overflowX !== "visible" && e !== root && e !== document.body && (box.right > own.right + near || !scrolls && box.bottom > own.bottom + near);
			}
			if (out) { faults.push(`cut off: ${JSON.stringify(node.data.slice(0, 60))}`); break; }
		}
	}
	if (looked === 0) faults.push("no text");
	return faults;
})()
