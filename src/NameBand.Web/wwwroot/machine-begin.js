import { begin } from './machine.js';

begin(document.getElementById('machine'));
