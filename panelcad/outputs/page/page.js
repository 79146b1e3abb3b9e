"use strict";
(function () {
  const root = document.documentElement;
  const stage = document.getElementById("stage");
  const left = document.getElementById("left");
  const right = document.getElementById("right");
  const wipe = document.getElementById("wipe");
  const about = document.getElementById("about");
  const readings = JSON.parse(document.getElementById("readings").textContent);
  root.classList.add("js");

  function show() {
    for (const panel of stage.querySelectorAll(".panel")) {
      panel.classList.toggle("left", panel.dataset.option === left.value);
      panel.classList.toggle("right", panel.dataset.option === right.value);
    }
    document.getElementById("left-name").textContent = "◀ " + nameOf(left);
    document.getElementById("right-name").textContent = nameOf(right) + " ▶";
    slide();
  }

  function nameOf(select) {
    return select.selectedOptions[0].textContent;
  }

  function slide() {
    stage.style.setProperty("--wipe", wipe.value + "%");
    wipe.setAttribute("aria-valuetext", wipe.value + " % " + nameOf(left) + ", the rest " + nameOf(right));
  }

  function light() {
    root.classList.toggle("night", document.getElementById("night").checked);
  }

  function tell(item) {
    for (const pressed of stage.querySelectorAll('[aria-pressed="true"]')) pressed.removeAttribute("aria-pressed");
    item.setAttribute("aria-pressed", "true");
    const option = item.closest(".panel").dataset.option;
    const words = readings[option][item.dataset.item];
    about.querySelector("h3").textContent = item.getAttribute("aria-label");
    about.querySelector("p").textContent = words || "";
  }

  function follow(event) {
    const box = stage.getBoundingClientRect();
    const share = (event.clientX - box.left) / box.width;
    wipe.value = Math.round(100 * Math.min(1, Math.max(0, share)));
    slide();
  }

  const edge = document.getElementById("edge");
  edge.addEventListener("pointerdown", function (event) {
    edge.setPointerCapture(event.pointerId);
    edge.addEventListener("pointermove", follow);
    event.preventDefault();
  });
  for (const end of ["pointerup", "pointercancel"]) {
    edge.addEventListener(end, function () { edge.removeEventListener("pointermove", follow); });
  }
  stage.addEventListener("click", function (event) {
    const item = event.target.closest(".item");
    if (item) tell(item);
  });
  stage.addEventListener("keydown", function (event) {
    const item = event.target.closest(".item");
    if (item && (event.key === "Enter" || event.key === " ")) {
      tell(item);
      event.preventDefault();
    }
  });
  for (const control of [left, right]) control.addEventListener("change", show);
  for (const radio of document.querySelectorAll('input[name="light"]')) radio.addEventListener("change", light);
  wipe.addEventListener("input", slide);
  document.getElementById("swap").addEventListener("click", function () {
    const was = left.value;
    left.value = right.value;
    right.value = was;
    show();
  });
  const size = document.getElementById("size");
  size.addEventListener("click", function () {
    const large = root.classList.toggle("large");
    size.setAttribute("aria-pressed", String(large));
  });
  document.getElementById("print").addEventListener("click", function () { window.print(); });
  light();
  show();
})();
