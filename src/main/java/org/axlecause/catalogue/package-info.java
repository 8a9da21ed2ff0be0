/** Lists every code and every rule with its text, its source and how firmly it is known. */
@NullMarked
package org.axlecause.catalogue;

import org.jspecify.annotations.NullMarked;
