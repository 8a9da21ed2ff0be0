package org.axlecause.fleet;

/**
 * How a workshop's roller tester records.
 *
 * @param trace whether it gives force over time, or figures only
 * @param pedalSensor whether the pedal force is recorded beside a trace
 * @param loadTold whether it weighs the axle
 */
record Lane(boolean trace, boolean pedalSensor, boolean loadTold) {}
