import { mount } from "svelte";
import App from "./App.svelte";
import "./look.css";
import { offline } from "./offline.svelte";
import { settings } from "./settings.svelte";
import { learn } from "./words";

await learn(settings.locale);
mount(App, { target: document.getElementById("app")! });

void offline.begin();
