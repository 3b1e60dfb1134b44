// Returns what somebody at the keyboard sees of where the focus is, and of what is next.
(() => {
	const focused = document.activeElement, field = focused.closest("[data-at]");
	const shows = focused.matches("[type=file]") ? focused.closest(".button") : focused, style = getComputedStyle(shows), box = shows.getBoundingClientRect();
	const over = document.elementFromPoint(box.left + Math.min(box.width, 30) / 2, box.top + Math.min(box.height, 40) / 2);
	const deed = e => ({ at: e.dataset.at, do: e.dataset.do ?? "", part: e.dataset.part ?? "" });
	const below = part => part ? [part, ...part.querySelectorAll("[data-at]")].filter(e => e.dataset.at).map(deed) : [];
	const folded = focused.matches("summary") && !focused.parentElement.open;
	const controls = field && !focused.matches("button") ? [...field.querySelectorAll("input, textarea, select")] : [];
	const does = focused.dataset.at ? focused : field;
	return JSON.stringify({
		lost: focused === document.body,
		ring: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
		seen: box.top >= 0 && box.top < innerHeight - 10 && !!over && (shows.contains(over) || over.contains(shows)),
		id: focused.id, what: focused.nodeName.toLowerCase(), words: focused.textContent.trim().slice(0, 60), value: focused.value ?? "",
		folded, part: focused.parentElement?.matches(".part") ?? false, asked: !!focused.querySelector(".mark")?.textContent,
		deed: does ? deed(does) : {},
		below: folded ? below(focused.parentElement) : focused.hash ? below($(focused.hash.slice(1))) : [],
		control: controls.indexOf(focused),
		controls: controls.map(c => ({
			what: c.type, value: c.type === "checkbox" && !c.checked ? "" : c.value, means: c.value, options: [...c.options ?? []].map(o => ({ value: o.value })),
		})),
		step, job, sheet: $("banner").textContent === "" && sheet !== "", faults: [...document.querySelectorAll("#form .fault")].map(f => f.textContent),
	});
})()
