// The words that a passphrase is made of: short, plain, of farm and house, without signs that a phone hides.

const ENGLISH = `
acorn alder amber anchor anvil apple april apron arch arrow ash aspen autumn axle badge bakery balcony
bamboo banjo bark barley barrel basil basin basket bath beacon beaver bench berry birch biscuit blanket
blossom boat bonnet border bottle boulder branch bread breeze brick bridge broom brush bucket buckle
bugle bumper butter button cabin cactus candle canoe canvas carpet carrot castle cattle cedar cellar
chalk cherry chestnut chimney cider circle cliff clock cloud clover cobbler coffee copper corner cotton
cradle crane cream creek cricket crimson crown crumb curtain daisy dawn dinner dough dragon drum eagle
elbow elm ember engine fabric falcon feather fence ferry fiddle field finch flannel flute forest fossil
fountain fox garden garlic gate ginger glove gold gopher grain granite grape gravel green guitar hammer
harbor harvest hatch hazel hedge helmet heron hickory hill hollow honey hoof horse hotel hunter icicle
indigo island ivory ivy jacket jam jasmine jelly jigsaw juniper kayak kettle kitten knot ladder lagoon
lake lantern larch lemon lentil letter lilac linen lobster locket lumber lupine magnet mango maple
marble market marsh meadow melon mill minnow mitten moon moss mulberry mustard napkin needle nest nickel
north nutmeg oak oats ocean olive onion orange orchard otter oven owl oyster paddle paint paper parsley
pasture peach pebble pencil pepper piano picnic pillow pine planet plank plum pocket polka pond poplar
potato pottery puddle pumpkin puzzle quail quarry quilt rabbit raft rainbow raisin rake raven ribbon
river robin rocket roof rooster rope rose saddle sage sailor salmon sandal scarf seed shade shed shovel
silver sister sleigh slope snow socket spade sparrow spice spoon spring spruce squash stable star stone
straw stream sugar summer sunset swallow table tailor teapot thimble thistle thunder timber tin toast
tomato tower trail trumpet tulip tunnel turnip turtle umbrella valley vanilla velvet village violet
violin wagon walnut water wheat whistle willow window winter wolf wool yarn yellow zebra zipper
`;

const SPANISH = `
abeja abrigo abuelo aceite agua aguja ajo alba aldea alegre alfalfa almendra alto amarillo amigo ancla
anillo apio arado arbusto arcilla arena arroyo arroz atardecer aurora avena azafran azul baile balcon
balde ballena banco bandera barco barro bicicleta blanco boina bolsa bosque bota botella brasa brisa
broche bronce bufanda burro caballo cabra cacao cactus cadena caja calabaza caldo calle camello camino
campana canasta canela canoa cantaro caracol carbon carpeta carreta casa cascada castillo cebada cebolla
cedro ceniza cereza cerro cesta chaleco charco chico ciervo cigarra ciruela cisne clavel cobija cobre
cocina coco colina collar colmena comal conejo copa coral corral cosecha crema cuadro cuarzo cubeta
cuchara cuerda cueva danza dedal delfin diente durazno ebano eclipse elote encino enero escalera escoba
espejo espiga esponja estrella estufa fabrica faro febrero feria fiesta flauta flecha flor foca fogata
fresa fresno frijol fuego fuente galleta gallo ganso garza gato girasol globo gorra gota granja grano
grillo guante guitarra gusano hacha harina helecho heno herradura hielo hierba higo hilo hoja hongo
horno huerta hueso iglesia iguana isla jabon jade jaguar jamaica jardin jarra jazmin jinete jitomate
junio ladera ladrillo lago lana lancha laurel lazo leche lechuga lentes leopardo libro liebre lienzo
lima limon linterna lirio llave lluvia lobo loma luna maceta madera maguey maleta mango mantel manzana
mapa mar mariposa marmol martillo mayo mazorca melon membrillo menta mercado mesa metate miel milpa
molino moneda montura mora morral mosaico muralla musgo naranja nido nieve nogal noria norte nube nuez
obrero oca oliva olla onda oregano orilla oro oso otate oveja pajaro pala palma paloma pan papalote
papaya parque pasto patio pato pavo pelota pera perico petate pez piedra pimienta pincel pino pinza
pirata pizarra planta plata playa pluma pollo potro pozo prado puente puerta pulpo queso quinta rama
rana rayo rebozo reja reloj remo rio roble roca rosa rueda sabana sal salvia sandia sapo sarape sauce
selva semilla sendero sierra silla sol sombra sopa tambor tapete taza tecla telar tierra tigre tijera
tinta tobillo tomillo torre tortuga trebol trigo trueno tucan tuna uva vaca valle vela velero venado
ventana verano viento violeta yegua yema yunque zacate zafiro zapato zorro
`;

const listed = (text: string): readonly string[] => text.trim().split(/\s+/);

/** The list of each language that has one; a farm with another first language takes the English one. */
export const WORD_LISTS: Readonly<Record<string, readonly string[]>> = {
  en: listed(ENGLISH),
  es: listed(SPANISH),
};
