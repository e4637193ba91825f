import { mount } from "svelte";
import App from "./App.svelte";
import "./look.css";
import { offline } from "./offline.svelte";

mount(App, { target: document.getElementById("app")! });

void offline.begin();
