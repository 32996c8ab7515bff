/** The shop's clock for forms: days and minutes typed there, and what day it is there now. */
export { instantOfShopMinute, shopClock, shopDay } from "#shop/time/shop-time";
