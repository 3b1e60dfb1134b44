// Returns what somebody at the keyboard sees of where the focus is, and of what is next.
(() => {
	const e = document.activeElement, at = e.closest("[data-at]"), shows = e.matches("[type=file]") ? e.closest(".button") : e, style = getComputedStyle(shows), box = shows.getBoundingClientRect();
	const over = document.elementFromPoint(box.left + Math.min(box.width, 30) / 2, box.top + Math.min(box.height, 40) / 2);
	const deeds = inside => inside.map(d => ({ at: d.dataset.at, do: d.dataset.do ?? "", part: d.dataset.part ?? "" }));
	const below = part => part ? deeds([part, ...part.querySelectorAll("[data-at]")].filter(d => d.dataset.at)) : [];
	const controls = at && !e.matches("button") ? [...at.querySelectorAll("input, textarea, select")] : [];
	const folded = e.matches("summary") && !e.parentElement.open;
	return JSON.stringify({
		lost: e === document.body, id: e.id, what: e.nodeName.toLowerCase(), words: e.textContent.trim().slice(0, 60), part: e.parentElement?.matches(".part") ?? false,
		ring: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
		seen: box.top >= 0 && box.top < innerHeight - 10 && !!over && (shows.contains(over) || over.contains(shows)),
		deed: deeds(e.dataset.at ? [e] : at ? [at] : [])[0] ?? {}, folded, asked: !!e.querySelector(".mark")?.textContent,
		below: folded ? below(e.parentElement) : e.hash ? below($(e.hash.slice(1))) : [],
		value: e.value ?? "", control: controls.indexOf(e), controls: controls.map(c => ({ what: c.type, value: c.type === "checkbox" ? (c.checked ? c.value : "") : c.value, means: c.value, options: [...c.options ?? []].map(o => ({ value: o.value })) })),
		next: $("next").textContent, step, job, sheet: $("banner").textContent === "" && sheet !== "", faults: [...document.querySelectorAll("#form .fault")].map(f => f.textContent),
	});
})()
