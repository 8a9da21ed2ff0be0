/** Orders the work, merges scope lines, prices them from the site's price list. */
@NullMarked
package org.axlecause.repair;

import org.jspecify.annotations.NullMarked;
