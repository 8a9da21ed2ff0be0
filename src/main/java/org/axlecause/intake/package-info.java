/** Takes CloudEvents in, checks them, refuses or acknowledges them, and hands on accepted events. */
@NullMarked
package org.axlecause.intake;

import org.jspecify.annotations.NullMarked;
