/** The words of the trade as immutable records and enums, shared by Java and DRL; imports nothing but the JDK. */
@NullMarked
package org.axlecause.facts;

import org.jspecify.annotations.NullMarked;
